// hook-plumb, leg-clearance and the cranes of a piece on two hooks, against closed forms.

#include <catch2/catch.hpp>

#include <cmath>

#include <fmt/format.h>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

// The slab on two hooks, each with two legs; level, `apart` between them along the slab, whose picks are 2 m apart.
struct OnTwoHooks {
  SlabLift lift;
  explicit OnTwoHooks(Length apart) {
    plan::Rigging& rigging = lift.plan.riggings.front();
    rigging.equalised.clear();
    plan::Hook west{"west", {}, "bay", {}}, east{"east", {apart, 0.0 * m, 0.0 * m}, "yard", {}};
    rigging.hooks = {west, east};
    rigging.legs[0].from = rigging.legs[3].from = "west";
    rigging.legs[1].from = rigging.legs[2].from = "east";
    plan::Crane yard = lift.plan.cranes.front();
    yard.id = "yard";
    lift.plan.cranes.push_back(yard);
  }
};

// Of a leg of 2.5 m to picks 1 m apart across the slab: its height and its lean along it, where the hooks stand `out` of
// their picks.
double off_plumb(double out_m) {
  const double reach_m = std::sqrt(2.5 * 2.5 - 0.5 * 0.5);  // of both legs together, across them
  return std::asin(out_m / reach_m);
}

}  // namespace

TEST_CASE("hook-plumb: hooks over their picks are plumb, others lean by asin(out / reach)") {
  OnTwoHooks over(2.0 * m);
  const Finding plumb = finding_for("hook-plumb", "four legs", over.lift.facts());
  CHECK(plumb.result == Result::pass);
  CHECK(in(deg, std::get<Angle>(*plumb.demand)) == Approx(0.0).margin(1e-3));

  OnTwoHooks wide(3.0 * m);
  const Finding aside = finding_for("hook-plumb", "four legs", wide.lift.facts());
  CHECK(aside.result == Result::fail);
  CHECK(std::get<Angle>(*aside.demand).value() == Approx(off_plumb(0.5)).epsilon(5e-3));  // nearly rigid legs stretch a little
  check_says_why(aside);
}

TEST_CASE("hook-plumb at the limit, one step below and above") {
  OnTwoHooks lift(2.2 * m);
  const Angle leans = std::get<Angle>(*finding_for("hook-plumb", "four legs", lift.lift.facts()).demand);
  lift.lift.rules.hook_side_pull.value = leans;
  CHECK(finding_for("hook-plumb", "four legs", lift.lift.facts()).result == Result::pass);
  lift.lift.rules.hook_side_pull.value = Angle::from_value(std::nextafter(leans.value(), 0.0));
  CHECK(finding_for("hook-plumb", "four legs", lift.lift.facts()).result == Result::fail);
}

TEST_CASE("each crane is compared with the pull along its rope, more than half the weight where it leans") {
  OnTwoHooks wide(3.0 * m);
  const auto facts = wide.lift.facts();
  const auto cranes = cranes_of(facts);
  REQUIRE(cranes.size() == 2);
  const auto load = hook_load(facts, cranes.front());
  REQUIRE(is_assessed(load));
  CHECK(std::get<HookLoad>(load).share == Approx(0.5 / std::cos(off_plumb(0.5))).epsilon(5e-3));
}

TEST_CASE("two hooks at one place are refused") {
  OnTwoHooks lift(0.1 * m);
  bool refused = false;
  for (const Finding& finding : judged("leg-clearance", lift.lift.facts())) {
    if (finding.result == Result::fail && finding.text.find("hook west and hook east") != std::string::npos) refused = true;
    check_says_why(finding);
  }
  CHECK(refused);
}

TEST_CASE("leg-clearance: the slab on its four legs has room, and a plan without statics is on HOLD") {
  SlabLift lift;
  CHECK(finding_for("leg-clearance", "four legs", lift.facts()).result == Result::pass);
  lift.leg(0).length.reset();
  const Finding unknown = finding_for("leg-clearance", "four legs", lift.facts());
  CHECK(unknown.result == Result::missing);
  check_says_why(unknown);
}

TEST_CASE("leg-clearance: an upstand in the way of a leg, beside it, and away from it") {
  SlabLift lift;
  plan::Solid upstand;
  upstand.name = "upstand";
  upstand.size = {0.2 * m, 0.2 * m, 0.6 * m};
  // The legs lean by 1 m in x and 0.5 m in y on a height of sqrt(2.5^2 - 1 - 0.25) = 2.236 m.
  SECTION("in the way") {
    upstand.at = {1.1 * m, 0.5 * m, 0.3 * m};
    lift.plan.piece.solids.push_back(upstand);
    const Finding finding = finding_for("leg-clearance", "four legs", lift.facts());
    CHECK(finding.result == Result::fail);
    check_says_why(finding);
  }
  SECTION("beside it") {
    upstand.at = {1.08 * m, 0.33 * m, 0.3 * m};  // 200 mm up it the leg passes 10 mm beside
    lift.plan.piece.solids.push_back(upstand);
    const auto facts = lift.facts();
    const Finding finding = finding_for("leg-clearance", "four legs", facts);
    CHECK(finding.result == Result::missing);
    CHECK(finding.text.find("A1") != std::string::npos);
    check_says_why(finding);
  }
  SECTION("away") {
    upstand.at = {0.2 * m, 0.2 * m, 0.3 * m};
    lift.plan.piece.solids.push_back(upstand);
    CHECK(finding_for("leg-clearance", "four legs", lift.facts()).result == Result::pass);
  }
}

TEST_CASE("leg-clearance: a hook that would be inside the concrete") {
  SlabLift lift;
  plan::Solid stem;
  stem.name = "stem";
  stem.size = {0.4 * m, 2.0 * m, 3.0 * m};
  stem.at = {1.8 * m, 0.0 * m, 0.3 * m};
  lift.plan.piece.solids.push_back(stem);
  bool hook = false;
  for (const Finding& finding : judged("leg-clearance", lift.facts()))
    if (finding.text.starts_with("the hook would go through")) hook = finding.result == Result::fail;
  CHECK(hook);
}

namespace {

// Block on a beam of two lower points, and a third leg from the hook past the beam to a pick `aside` of the beam's middle.
Finding leg_beside_a_beam(Length aside) {
  SlabLift lift;
  plan::Rigging& rigging = lift.plan.riggings.front();
  rigging.equalised.clear();
  plan::Beam beam;
  beam.id = "bm";
  beam.weight = 1.0 * kN;
  beam.rated = 100.0 * kN;
  beam.inspected = made_day;
  for (const double z_m : {0.05, -0.05})
    for (const double x_m : {-1.0, 1.0})
      beam.points.push_back({fmt::format("{}{}", z_m > 0.0 ? "t" : "b", x_m < 0.0 ? "l" : "r"),
                             {x_m * m, 0.0 * m, z_m * m}, {}});
  rigging.beams = {beam};
  lift.plan.inserts = {headed_insert_at("A1", 1.0 * m, 1.0 * m), headed_insert_at("A2", 3.0 * m, 1.0 * m),
                       headed_insert_at("A3", 2.0 * m, 1.0 * m + aside)};
  plan::Leg left = leg_to("tl"), right = leg_to("tr"), first = leg_to("A1"), second = leg_to("A2"), past = leg_to("A3");
  left.length = right.length = std::sqrt(2.0) * m;
  first.from = "bl", second.from = "br";
  first.length = second.length = 2.0 * m;
  past.length = std::hypot(3.1, in(m, aside)) * m;
  rigging.legs = {left, right, first, second, past};
  std::vector<Finding> findings = judged("leg-clearance", lift.facts());
  Finding worst = findings.at(0);
  for (const Finding& finding : findings) {
    INFO(finding.text);
    if (finding.text.find("beam bm") != std::string::npos) worst = finding;
  }
  return worst;
}

}  // namespace

TEST_CASE("leg-clearance: a leg through a beam, beside it, and away from it") {
  // The leg passes the height of the beam a third of the way down from the hook, a third of `aside` beside it.
  const Finding through = leg_beside_a_beam(0.0 * m);
  CAPTURE(through.text);
  CHECK(through.result == Result::fail);
  CHECK(through.text.find("beam bm") != std::string::npos);
  check_says_why(through);
  const Finding beside = leg_beside_a_beam(0.045 * m);
  CHECK(beside.result == Result::missing);
  check_says_why(beside);
  CHECK(leg_beside_a_beam(0.3 * m).result == Result::pass);
}
