// A slab with two ribs below it, by hand-made rules: which model it gets, and what it is asked.

#include <catch2/catch.hpp>

#include <cmath>

#include "checks/piece_model.hpp"
#include "checks/stepped_panel.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";

plan::Solid box(const std::string& name, Position at, Vector<Length> size, bool cut = false) {
  plan::Solid made;
  made.name = name;
  made.at = at;
  made.size = size;
  made.cut = cut;
  return made;
}

// 4 x 2 m, 0.15 m thick, ribs 0.4 m wide and 0.15 m high along it, below its inserts.
void make_ribbed(SlabLift& lift, Length rib_width = 0.4 * m) {
  lift.plan.piece.solids = {box("slab", {0.0 * m, 0.0 * m, 0.15 * m}, {4.0 * m, 2.0 * m, 0.15 * m})};
  for (const double y : {0.5, 1.5})
    lift.plan.piece.solids.push_back(box(y < 1.0 ? "rib 1" : "rib 2", {0.0 * m, y * m - 0.5 * rib_width, 0.0 * m},
                                         {4.0 * m, rib_width, 0.15 * m}));
  lift.plan.piece.stated_weight = 39.6 * kN;
}

ModelChoice model_of(SlabLift& lift) {
  const auto facts = lift.facts();
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

}  // namespace

TEST_CASE("a slab on two ribs is a panel in steps, its zones as they are") {
  SlabLift lift;
  make_ribbed(lift);
  const auto facts = lift.facts();
  const auto stepped = stepped_face(facts.plan, facts.body, facts.rules.cracking);
  REQUIRE(stepped);
  CHECK(stepped->zones.size() == 5);
  CHECK(in(m, stepped->thinnest) == Approx(0.15));
  CHECK(in(m, stepped->thickest) == Approx(0.3));
  CHECK(in(m3, stepped->volume) == Approx(1.68));
  CHECK(model_of(lift).model == plan::PieceModel::panel);
  CHECK(model_of(lift).stepped);
}

TEST_CASE("a slab on two ribs is bent less than its slab alone would be, and more than a slab as thick as its ribs") {
  SlabLift lift;
  make_ribbed(lift);
  const Finding finding = finding_for(id, "SL-1", lift.facts());
  CAPTURE(finding.text, finding.situation);
  CHECK(finding.result == Result::pass);
  REQUIRE(finding.demand);
  const double tension = in(MPa, std::get<Stress>(*finding.demand));
  CHECK(tension > 0.05);
  CHECK(tension < 1.0);
}

TEST_CASE("the step ratio: at, below and above") {
  SlabLift lift;
  make_ribbed(lift);
  const auto stepped_at = [&](double ratio) {
    lift.rules.cracking.step_ratio.value = Ratio::from_value(ratio);
    return model_of(lift).stepped;
  };
  CHECK(stepped_at(2.0 * (1.0 + 1e-9)));
  CHECK_FALSE(stepped_at(2.0 * (1.0 - 1e-9)));
  CHECK_FALSE(stepped_at(std::nan("")));
}

TEST_CASE("what the plate of zones does not describe is a hold") {
  SlabLift lift;
  make_ribbed(lift);
  auto& solids = lift.plan.piece.solids;
  SECTION("ribs narrower than high") { make_ribbed(lift, 0.2 * m); }
  SECTION("steps on both faces") {
    solids.push_back(box("upstand", {0.0 * m, 0.9 * m, 0.3 * m}, {4.0 * m, 0.2 * m, 0.05 * m}));
    lift.plan.piece.stated_weight = 40.6 * kN;
  }
  SECTION("a pocket under the inserts' face") {
    solids.push_back(box("slot", {1.5 * m, 0.8 * m, 0.2 * m}, {1.0 * m, 0.4 * m, 0.05 * m}, true));
    lift.plan.piece.stated_weight = 39.1 * kN;
  }
  lift.plan.piece.model = plan::PieceModel::panel;
  const Finding finding = finding_for(id, "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("a recess in the lower face is a zone of its own") {
  SlabLift lift;
  lift.plan.piece.solids.push_back(box("recess", {1.5 * m, 0.8 * m, 0.0 * m}, {1.0 * m, 0.4 * m, 0.1 * m}, true));
  lift.plan.piece.stated_weight = 55.5 * kN;
  lift.plan.concrete.density_tolerance = Ratio::from_value(0.03);
  const Finding whole = [] {
    SlabLift plain;
    return finding_for(id, "SL-1", plain.facts());
  }();
  const Finding finding = finding_for(id, "SL-1", lift.facts());
  CAPTURE(finding.text);
  REQUIRE(finding.demand);
  CHECK(finding.result == Result::pass);
  CHECK(std::get<Stress>(*finding.demand) > std::get<Stress>(*whole.demand));
}
