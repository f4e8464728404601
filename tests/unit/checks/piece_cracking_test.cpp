// Beams and panels that hang by hand-made rules: strip factor 1.3, modulus of rupture 7.5 sqrt(f) psi over 1.5.

#include <catch2/catch.hpp>

#include <cmath>

#include "checks/bending_multiplier.hpp"
#include "checks/piece_model.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr std::string_view id = "piece-cracking";

// 12 m x 0.4 x 0.6 m on two picks c from its ends, legs at 60 degrees to a hook in the middle; nothing grips.
void make_beam(SlabLift& lift, double c_m) {
  lift.plan.piece.solids[0].size = {12.0 * m, 0.4 * m, 0.6 * m};
  lift.plan.piece.stated_weight = 67.8 * kN;
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {headed_insert_at("A1", c_m * m, 0.2 * m), headed_insert_at("A2", (12.0 - c_m) * m, 0.2 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.6 * m;
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  lift.plan.riggings[0].equalised.clear();
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = (12.0 - 2.0 * c_m) * m;  // 60 degrees
}

Finding finding_of(SlabLift& lift) { return finding_for(id, "SL-1", lift.facts()); }

double tension_MPa(const Finding& finding) {
  REQUIRE(finding.demand);
  return in(MPa, std::get<Stress>(*finding.demand));
}

}  // namespace

TEST_CASE("a beam: sagging with the moment of the thrust, less its compression") {
  SlabLift lift;
  make_beam(lift, 2.4852);
  const double w = 1.3 * 0.24 * 2400.0 * 1.03 * standard_gravity_m_per_s2, V = 6.0 * w, c = 2.4852;
  const double H = V / std::tan(60.0 * deg.value());
  const double M = w * 12.0 * 12.0 / 8.0 - w * 6.0 * c + 0.3 * H;
  const Finding finding = finding_of(lift);
  CAPTURE(finding.text, finding.situation);
  CHECK(finding.result == Result::pass);
  CHECK(tension_MPa(finding) == Approx((M / 0.024 - H / 0.24) / 1e6).epsilon(0.005));  // legs give a little
}

TEST_CASE("a beam picked at its ends cracks, and the finding says where and what helps") {
  SlabLift lift;
  make_beam(lift, 0.5);
  const Finding finding = finding_of(lift);
  CHECK(finding.result == Result::fail);
  CHECK(finding.text.find("bottom of the piece, at x = 6") != std::string::npos);
  CHECK(finding.remedy.find("strongback") != std::string::npos);
}

TEST_CASE("along y it is the same beam") {
  SlabLift along_x, along_y;
  make_beam(along_x, 2.0);
  make_beam(along_y, 2.0);
  along_y.plan.piece.solids[0].size = {0.4 * m, 12.0 * m, 0.6 * m};
  for (plan::Insert& insert : along_y.plan.inserts) std::swap(insert.at.x, insert.at.y);
  CHECK(tension_MPa(finding_of(along_y)) == Approx(tension_MPa(finding_of(along_x))).epsilon(1e-6));
}

TEST_CASE("a notch in the side is where the beam is weakest") {
  SlabLift lift;
  make_beam(lift, 2.4852);
  const double whole = tension_MPa(finding_of(lift));
  plan::Solid notch = lift.plan.piece.solids[0];
  notch.name = "notch";
  notch.cut = true;
  notch.at = {5.8 * m, 0.0 * m, 0.0 * m};
  notch.size = {0.4 * m, 0.4 * m, 0.2 * m};
  lift.plan.piece.solids.push_back(notch);
  // Section modulus falls to (0.4/0.6)^2; the compression and its arm change a little too.
  const double notched = tension_MPa(finding_of(lift));
  CHECK(notched > 1.6 * whole);
  CHECK(notched < 2.6 * whole);
}

TEST_CASE("at, below and above the limit") {
  SlabLift lift;
  make_beam(lift, 2.4852);
  const double utilization = finding_of(lift).utilization.value();
  const auto result_at = [&](double factor) {
    lift.rules.cracking.factor.value = Ratio::from_value(factor);
    return finding_of(lift).result;
  };
  CHECK(result_at(1.5 / utilization * (1.0 - 1e-9)) == Result::pass);
  CHECK(result_at(1.5 / utilization * (1.0 + 1e-9)) == Result::fail);
  CHECK(result_at(std::nan("")) == Result::missing);
}

TEST_CASE("a tilted beam is still in balance") {
  SlabLift lift;
  make_beam(lift, 2.4852);
  lift.leg(0).length = 7.1 * m;
  const Finding finding = finding_of(lift);
  CAPTURE(finding.text);
  CHECK(finding.result == Result::pass);
}

TEST_CASE("a panel on four picks") {
  SlabLift lift;  // 4 x 2 x 0.3 m
  const Finding finding = finding_of(lift);
  CAPTURE(finding.text);
  CHECK(finding.result == Result::pass);
  // Not less than the beam's hogging at the picks over the full width, without factor and grip.
  const double w = 2400.0 * 0.3 * standard_gravity_m_per_s2;
  CHECK(tension_MPa(finding) > 6.0 * 0.5 * w * 1.0 * 1.0 / 0.09 / 1e6);
  CHECK(tension_MPa(finding) < 0.5);
}

TEST_CASE("the model is derived from the shape, or stated") {
  SlabLift lift;
  const auto model = [&] {
    const auto facts = lift.facts();
    return piece_model(facts.plan, facts.body, facts.rules.cracking);
  };
  CHECK(model().model == plan::PieceModel::panel);
  lift.plan.piece.solids[0].size.z = 0.8 * m;
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.8 * m;
  CHECK(model().model == plan::PieceModel::block);
  lift.plan.piece.model = plan::PieceModel::line;
  CHECK(model().model == plan::PieceModel::line);
  CHECK(model().stated);
  CHECK_FALSE(model().fits);  // 4 m x 2 m
  const auto facts = lift.facts();
  CHECK(told(model(), facts.body, facts.rules.cracking, UnitSystem::si) ==
        "bending of the piece: computed as a line, as the plan states");
}

TEST_CASE("a block passes where it is small and stocky: at, below and above both limits") {
  SlabLift lift;  // 4 x 2 x 0.3 m: surface 19.6 m2, mean thickness 2 x 2.4 / 19.6 m, 16.33 of them across
  lift.plan.piece.model = plan::PieceModel::block;
  lift.rules.cracking.panel_slenderness.value = Ratio{100.0};  // no panel by its shape
  CHECK(finding_of(lift).result == Result::missing);
  check_says_why(finding_of(lift));
  const auto result_with = [&](double thicknesses, double size_m) {
    lift.rules.cracking.block_slenderness.value = Ratio::from_value(thicknesses);
    lift.rules.cracking.block_size.value = size_m * m;
    return finding_of(lift).result;
  };
  const double slenderness = 4.0 * 19.6 / 4.8;
  CHECK(result_with(slenderness * (1.0 + 1e-9), 4.0 * (1.0 + 1e-9)) == Result::note);
  CHECK(result_with(slenderness * (1.0 - 1e-9), 5.0) == Result::missing);
  CHECK(result_with(20.0, 4.0 * (1.0 - 1e-9)) == Result::missing);
  CHECK(result_with(std::nan(""), 5.0) == Result::missing);
  CHECK(result_with(20.0, std::nan("")) == Result::missing);
}

TEST_CASE("a slab called a beam or a block is HOLD, blanks are no check of the engineer's") {
  SlabLift lift;
  lift.rules.cracking.block_slenderness.value = Ratio{100.0};  // stocky enough
  lift.rules.cracking.block_size.value = 10.0 * m;
  lift.plan.piece.model = GENERATE(plan::PieceModel::line, plan::PieceModel::block);
  CHECK(finding_of(lift).result == Result::missing);
  check_says_why(finding_of(lift));
  lift.plan.piece.bending_check = GENERATE(as<std::string>{}, " \t ", "-", "?");
  CHECK(finding_of(lift).result == Result::missing);
  lift.plan.piece.bending_check = "sheet 6";
  CHECK(finding_of(lift).result == Result::note);
}

TEST_CASE("the engineer's own check stands in where nothing is computed, and mends no failure") {
  SlabLift lift;
  lift.plan.piece.bending_check = "sheet 6";
  SECTION("a block") {
    lift.plan.piece.model = plan::PieceModel::block;
    CHECK(finding_of(lift).result == Result::note);
    CHECK(finding_of(lift).text.find("sheet 6") != std::string::npos);
  }
  SECTION("a beam that is too weak") {
    make_beam(lift, 0.5);
    CHECK(finding_of(lift).result == Result::fail);
  }
  SECTION("strength that is not known") {
    lift.plan.concrete.evidence.reset();
    CHECK(finding_of(lift).result == Result::missing);
  }
  SECTION("a leg without length") {
    lift.leg(0).length.reset();
    CHECK(finding_of(lift).result == Result::missing);
  }
}

TEST_CASE("a panel that is none is not assessed") {
  SlabLift lift;
  lift.plan.piece.model = plan::PieceModel::panel;
  plan::Solid rib = lift.plan.piece.solids[0];
  rib.name = "rib";
  rib.at = {0.0 * m, 0.0 * m, -0.2 * m};
  rib.size = {4.0 * m, 0.3 * m, 0.2 * m};
  lift.plan.piece.solids.push_back(rib);
  const Finding finding = finding_of(lift);
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  lift.plan.piece.bending_check = "sheet 6";
  CHECK(finding_of(lift).result == Result::note);
}

TEST_CASE("what is missing is a hold: strength, statics, loads, turning") {
  SlabLift lift;
  SECTION("strength") { lift.plan.concrete.evidence.reset(); }
  SECTION("a leg without length") { lift.leg(0).length.reset(); }
  SECTION("loads") { lift.plan.concrete.density_tolerance.reset(); }
  SECTION("turning") {
    lift.stage().kind = plan::StageKind::turn;
    lift.rules.dynamic_factor.emplace("turn", made_ratio("dynamic.turn", 1.2));
  }
  SECTION("kind of concrete") { lift.plan.concrete.kind = "unknown"; }
  const Finding finding = finding_of(lift);
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("the handbook's multiplier raises the load where it is more, and never lowers it") {
  SlabLift lift;
  Trace silent;
  const auto raise = [&] { return assessed(bending_raise(lift.facts(), silent)).value(); };
  CHECK(raise() == 1.0);  // none for the stage
  // Panel of 56.5 kN stated, 58.2 kN with the tolerance; 1.3 x that + 8 kN of grip is 1.437 x it.
  lift.rules.bending_multiplier.emplace("strip.flat.smooth", made_ratio("m", 1.3));
  CHECK(raise() == 1.0);
  lift.rules.bending_multiplier.emplace("strip.sculptured.smooth", made_ratio("m", 1.7));
  CHECK(raise() == Approx(1.7 / 1.437).epsilon(1e-3));
  lift.plan.form->product = "flat.smooth";
  CHECK(raise() == 1.0);
  lift.plan.form->product = "sculptured.smooth";
  CHECK(raise() == Approx(1.7 / 1.437).epsilon(1e-3));
  lift.plan.form->product = "other";
  CHECK(why_not(bending_raise(lift.facts(), silent)).find("other") != std::string::npos);
}
