// rigging-statics and hanging-tilt: the piece hangs in equilibrium, stably, on legs that pull, and level enough.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("rigging-statics: passes where the piece hangs") {
  SlabLift lift;
  CHECK(finding_for("rigging-statics", "four legs", lift.facts()).result == Result::pass);
}

TEST_CASE("rigging-statics: missing where it cannot be computed, with the reason") {
  SlabLift lift;
  SECTION("a leg without length") { lift.leg(2).length.reset(); }
  SECTION("legs too short to meet") {
    for (std::size_t i = 0; i < 4; ++i) lift.leg(i).length = 0.6 * m;
  }
  SECTION("a leg to no insert") { lift.leg(1).to = "Z9"; }
  SECTION("no load") { lift.plan.concrete.density_tolerance.reset(); }
  const Finding finding = finding_for("rigging-statics", "four legs", lift.facts());
  CHECK(finding.result == Result::missing);
  CHECK_FALSE(finding.text.empty());
}

TEST_CASE("rigging-statics: missing for a stage that names no rigging") {
  SlabLift lift;
  lift.stage().rigging = "";
  const Finding finding = finding_for("rigging-statics", "", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("rigging-statics: a leg that would run into the concrete is missing: it bends over the edge") {
  SlabLift lift;
  // Inserts in the end faces, legs up to a hook over the middle: each leg crosses the slab.
  lift.plan.inserts[0].at = {0.0 * m, 1.0 * m, 0.15 * m};
  lift.plan.inserts[1].at = {4.0 * m, 1.0 * m, 0.15 * m};
  lift.plan.inserts[2].at = {3.0 * m, 1.5 * m, 0.3 * m};
  lift.plan.inserts[3].at = {1.0 * m, 1.5 * m, 0.3 * m};
  for (const std::size_t i : {0U, 1U}) lift.leg(i).length = 3.1 * m;
  lift.plan.riggings.front().equalised.clear();
  const StageFacts facts = lift.facts();
  const Finding finding = finding_for("rigging-statics", "four legs", facts);
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
  Trace silent;
  CHECK(evaluate_stage(facts, silent).verdict != Verdict::go);
}

TEST_CASE("hanging-tilt: free sheaves on both sides let a flat slab tip") {
  SlabLift lift;
  lift.plan.riggings.front().equalised = {{{"A1", {}}, {"A2", {}}}, {{"A3", {}}, {"A4", {}}}};
  const Finding finding = finding_for("hanging-tilt", "four legs", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.remedy.find("equalised") != std::string::npos);
  check_says_why(finding);
}

TEST_CASE("hanging-tilt: exactly the limit passes, one step more tilt fails") {
  SlabLift lift;
  lift.leg(2).length = 2.45 * m;  // a little out of level
  const Angle tilt = std::get<demands::Hanging>(lift.facts().hanging).tilt;
  REQUIRE(tilt > 0.1 * deg);
  lift.rules.maximum_tilt.value = tilt;
  CHECK(finding_for("hanging-tilt", "four legs", lift.facts()).result == Result::pass);
  lift.rules.maximum_tilt.value = Angle::from_value(std::nextafter(tilt.value(), 0.0));
  const Finding finding = finding_for("hanging-tilt", "four legs", lift.facts());
  CHECK(finding.result == Result::fail);
  check_says_why(finding);
}

TEST_CASE("hanging-tilt: a tilt or a limit that is not a number is missing") {
  SlabLift lift;
  SECTION("limit") { lift.rules.maximum_tilt.value = std::numeric_limits<double>::quiet_NaN() * deg; }
  SECTION("limit of zero") { lift.rules.maximum_tilt.value = Angle{}; }
  StageFacts facts = lift.facts();
  SECTION("tilt") {
    std::get<demands::Hanging>(facts.hanging).tilt = std::numeric_limits<double>::quiet_NaN() * deg;
  }
  CHECK(finding_for("hanging-tilt", "four legs", facts).result == Result::missing);
}
