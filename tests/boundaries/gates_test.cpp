// The limits of the gates: at, one step below and one above. What is not a number is in tests/unit/checks.

#include <catch2/catch.hpp>

#include <cmath>

#include "checks/crane_hook_load.hpp"
#include "checks/worst_leg.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

template <class Q>
Q one_step_below(Q q) {
  return Q::from_value(std::nextafter(q.value(), 0.0));
}
template <class Q>
Q one_step_above(Q q) {
  return Q::from_value(std::nextafter(q.value(), 1e300));
}

}  // namespace

TEST_CASE("hardware-overload: exactly the mark passes, one step less marked fails") {
  SlabLift lift;
  lift.rules.hardware_factor.value = Ratio{1.0};
  auto& clutch = lift.plan.hardware[0];
  clutch.design_factor = 1.0;
  const Force tension = std::get<WorstLeg>(most_tension(lift.facts().gear_situations, 0)).tension;
  clutch.rated = tension;
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).utilization.value() == 1.0);
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).result == Result::pass);
  clutch.rated = one_step_above(tension);
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).result == Result::pass);
  clutch.rated = one_step_below(tension);
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).result == Result::fail);
  clutch.rated = Force{};
  CHECK(finding_for("hardware-overload", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE("crane-thresholds: exactly a share passes, one step over it needs a plan or is critical") {
  SlabLift lift;
  const Force hook = std::get<Force>(hook_load_of(lift));
  lift.plan.cranes[0].rated = Force{2.0 * hook};  // a power of two: shares of it are exact
  lift.rules.crane_planned_above.value = Ratio{0.5};
  lift.rules.crane_critical_above.value = Ratio{0.5};
  CHECK(finding_for("crane-thresholds", "bay", lift.facts()).result == Result::pass);
  lift.rules.crane_planned_above.value = one_step_below(Ratio{0.5});
  CHECK(finding_for("crane-thresholds", "bay", lift.facts()).result == Result::missing);
  lift.stage().critical_lift_plan = "plan 7";
  CHECK(finding_for("crane-thresholds", "bay", lift.facts()).result == Result::pass);
  lift.rules.crane_critical_above.value = one_step_below(Ratio{0.5});
  CHECK(finding_for("crane-thresholds", "bay", lift.facts()).result == Result::note);
}

TEST_CASE("gear-inspection: on the last day of the interval it passes, the day after it is missing") {
  SlabLift lift;
  const long long lift_day = plan::day_of(*lift.stage().at);
  for (const auto& [days, result] :
       {std::pair{0LL, Result::pass}, std::pair{364LL, Result::pass}, std::pair{365LL, Result::pass},
        std::pair{366LL, Result::missing}, std::pair{-1LL, Result::missing}}) {
    CAPTURE(days);
    lift.plan.slings[0].inspected->number = lift_day - days;
    CHECK(finding_for("gear-inspection", "chain", lift.facts()).result == result);
  }
}

TEST_CASE("insert-angle: exactly the limit passes, one step less allowed fails, zero is missing") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  const double degrees = si_number(finding_for("insert-angle", "A1", lift.facts()).demand.value());
  auto& limit = lift.plan.inserts[0].rating->maximum_angle;
  const Angle angle = std::get<Angle>(finding_for("insert-angle", "A1", lift.facts()).demand.value());
  CHECK(degrees == Approx(in(deg, angle)));
  limit = angle;
  CHECK(finding_for("insert-angle", "A1", lift.facts()).result == Result::pass);
  limit = one_step_above(angle);
  CHECK(finding_for("insert-angle", "A1", lift.facts()).result == Result::pass);
  limit = one_step_below(angle);
  CHECK(finding_for("insert-angle", "A1", lift.facts()).result == Result::fail);
  limit = Angle{};
  CHECK(finding_for("insert-angle", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE("pick-count: a piece exactly at the ratio is flat, one step thicker is not") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs.resize(2);
  lift.facts();
  const Position size = lift.body.highest - lift.body.lowest;
  lift.rules.flat_piece.value = Ratio{size.z / size.y};
  while (lift.rules.flat_piece.value * size.y < size.z)
    lift.rules.flat_piece.value = one_step_above(lift.rules.flat_piece.value);
  CHECK(finding_for("pick-count", "four legs", lift.facts()).result == Result::fail);
  lift.rules.flat_piece.value = Ratio{(size.z / size.y) * (1.0 - 1e-15 * 4.0)};
  CHECK(finding_for("pick-count", "four legs", lift.facts()).result == Result::pass);
}

TEST_CASE("pick-count: a third pick counts from one step more than the ratio off the line of the others") {
  SlabLift lift;
  lift.plan.riggings[0].equalised.clear();
  lift.plan.riggings[0].legs.resize(3);
  lift.facts();
  const Position size = lift.body.highest - lift.body.lowest;
  lift.rules.flat_piece.value = Ratio{0.25};  // of a width of 2 m: 0.5 m, without rounding
  REQUIRE(in(m, size.y) == 2.0);
  const Length top = lift.plan.inserts[0].at.z;
  lift.plan.inserts[0].at = {0.5 * m, 0.5 * m, top};
  lift.plan.inserts[1].at = {2.5 * m, 0.5 * m, top};
  const auto with_third_at = [&](Length y) {
    lift.plan.inserts[2].at = {1.0 * m, y, top};
    return finding_for("pick-count", "four legs", lift.facts());
  };
  CHECK(with_third_at(0.5 * m).result == Result::fail);
  const Finding at_the_ratio = with_third_at(1.0 * m);
  CHECK(at_the_ratio.result == Result::fail);
  check_says_why(at_the_ratio);
  CHECK(with_third_at(one_step_above(1.0 * m)).result == Result::pass);
}

TEST_CASE(
    "edge-insert-hanger-bar: edges exactly at the reach leave the face wide, one step nearer make it "
    "narrow") {
  SlabLift lift;  // pulled across by its legs
  StageFacts facts = lift.facts();
  const auto edges = lift.body.sites[0].edges.front().distance;
  CHECK(in(m, edges) == Approx(0.5));
  // The far edge is 1.5 m away: both are within reach only from there.
  lift.plan.inserts[0].hanger_bar = false;
  lift.plan.inserts[0].embedment = 1.0 * m;
  lift.rules.headed.cone_extent.value = Ratio{1.5 - 1e-9};
  CHECK(finding_for("edge-insert-hanger-bar", "A1", lift.facts()).result == Result::pass);
  lift.rules.headed.cone_extent.value = Ratio{1.5 + 1e-9};
  CHECK(finding_for("edge-insert-hanger-bar", "A1", lift.facts()).result == Result::fail);
}

TEST_CASE("edge-insert-hanger-bar: shear exactly at the share of tension passes, one step over it fails") {
  SlabLift lift;
  lift.plan.inserts[0].hanger_bar = false;
  lift.plan.inserts[0].embedment = 1.0 * m;
  lift.rules.headed.cone_extent.value = Ratio{1.6};  // both edges across y are within reach, none along x
  StageFacts facts = lift.facts();
  for (InsertSituation& s : std::get<std::vector<InsertSituation>>(facts.insert_situations)) {
    s.forces[0].tension = 16.0 * kN;
    s.forces[0].shear_u = s.forces[0].shear_v = 1.0 * kN;
  }
  lift.rules.edge_shear.value = Ratio{1.0 / 16.0};
  CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::pass);
  lift.rules.edge_shear.value = one_step_below(Ratio{1.0 / 16.0});
  CHECK(finding_for("edge-insert-hanger-bar", "A1", facts).result == Result::fail);
}
