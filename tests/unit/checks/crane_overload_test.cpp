// crane-overload: everything that hangs on the hook against the crane's rating.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "checks/crane_hook_load.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("crane-overload: the hook carries piece, grip of the form, rigging and block, without the dynamic factor") {
  SlabLift lift;
  const auto hook = hook_load_of(lift);
  REQUIRE(is_assessed(hook));
  // 2.4 m3 x 2400 kg/m3 x 1.03 x 9.80665 m/s2, 8 m2 x 1 kPa of grip, rigging and block of 1 kN each
  const double expected_kN = 2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0 + 8.0 + 1.0 + 1.0;
  CHECK(in(kN, std::get<Force>(hook)) == Approx(expected_kN).epsilon(1e-12));
}

TEST_CASE("crane-overload: without grip where the rule set says so") {
  SlabLift lift;
  lift.rules.crane_load.value = tables::CraneLoad::weight_and_gear;
  const auto hook = hook_load_of(lift);
  REQUIRE(is_assessed(hook));
  CHECK(in(kN, std::get<Force>(hook)) == Approx(2.4 * 2400.0 * 1.03 * 9.80665 / 1000.0 + 2.0).epsilon(1e-12));
}

TEST_CASE("crane-overload: exactly the rating passes, one step over fails") {
  SlabLift lift;
  const Force hook = std::get<Force>(hook_load_of(lift));
  lift.plan.cranes.front().rated = hook;
  CHECK(finding_for("crane-overload", "bay", lift.facts()).result == Result::pass);
  lift.plan.cranes.front().rated = Force::from_value(std::nextafter(hook.value(), 0.0));
  const Finding finding = finding_for("crane-overload", "bay", lift.facts());
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("crane-overload: what is not in the plan is missing, each with its remedy") {
  SlabLift lift;
  std::string subject = "bay";
  SECTION("no rating") { lift.plan.cranes.front().rated.reset(); }
  SECTION("no weight of the block") { lift.plan.cranes.front().block.reset(); }
  SECTION("no weight of the rigging") { lift.plan.riggings.front().weight.reset(); }
  SECTION("no density tolerance") { lift.plan.concrete.density_tolerance.reset(); }
  SECTION("no crane") {
    lift.stage().crane = "";
    subject = "";
  }
  const Finding finding = finding_for("crane-overload", subject, lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("crane-overload: a rating or a weight that is not a number is missing") {
  SlabLift lift;
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  SECTION("rating") { lift.plan.cranes.front().rated = not_a_number * kN; }
  SECTION("unlimited rating") { lift.plan.cranes.front().rated = std::numeric_limits<double>::infinity() * kN; }
  SECTION("rating of zero") { lift.plan.cranes.front().rated = 0.0 * kN; }
  SECTION("block") { lift.plan.cranes.front().block = not_a_number * kN; }
  SECTION("rigging") { lift.plan.riggings.front().weight = not_a_number * kN; }
  CHECK(finding_for("crane-overload", "bay", lift.facts()).result == Result::missing);
}
