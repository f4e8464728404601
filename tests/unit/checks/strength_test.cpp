// strength-evidence, strength-below-required and evidence-age: what the strength of the concrete rests on.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

TEST_CASE("strength-evidence: passes on usable results, missing without them") {
  SlabLift lift;
  CHECK(finding_for("strength-evidence", "SL-1", lift.facts()).result == Result::pass);

  lift.plan.concrete.evidence.reset();
  const Finding finding = finding_for("strength-evidence", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("strength-evidence: specimens cured under standard conditions are no evidence of this piece") {
  SlabLift lift;
  lift.plan.concrete.evidence->cure = plan::Cure::standard;
  const Finding finding = finding_for("strength-evidence", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("strength-below-required: enough passes, exactly enough passes, one step less fails") {
  SlabLift lift;
  auto& results = lift.plan.concrete.evidence->results;
  const auto required = [&](Stress strength) {
    lift.plan.concrete.form_stripping_strength = strength;
    return finding_for("strength-below-required", "SL-1", lift.facts());
  };
  CHECK(required(23.0 * MPa).result == Result::pass);
  CHECK(required(results.front()).result == Result::pass);
  CHECK(required(results.front()).utilization.value() == 1.0);
  const Stress step_more = Stress::from_value(std::nextafter(results.front().value(), 1e12));
  CHECK(required(step_more).result == Result::fail);
}

TEST_CASE("strength-below-required: the failure says what is needed and what there is, and sends nobody off early") {
  SlabLift lift;
  lift.plan.piece.units = UnitSystem::us;
  lift.plan.concrete.form_stripping_strength = 3500.0 * psi;
  lift.plan.concrete.evidence->results = {3100.0 * psi, 3200.0 * psi};
  const Finding finding = finding_for("strength-below-required", "SL-1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.text == "needs 3500 psi, has 3100 psi");
  check_says_why(finding);
}

TEST_CASE("strength-below-required: a near miss is not told as equal numbers") {
  SlabLift lift;
  lift.plan.piece.units = UnitSystem::si;
  lift.plan.concrete.form_stripping_strength = 20.0 * MPa;
  lift.plan.concrete.evidence->results = {19.999 * MPa, 25.0 * MPa};
  const Finding finding = finding_for("strength-below-required", "SL-1", lift.facts());
  CHECK(finding.result == Result::fail);
  CHECK(finding.text == "needs 20.0 MPa, has 19.9 MPa");
}

TEST_CASE("strength-below-required: missing without a strength on the drawing or without evidence") {
  SlabLift lift;
  SECTION("no strength on the drawing") { lift.plan.concrete.form_stripping_strength.reset(); }
  SECTION("no evidence") { lift.plan.concrete.evidence.reset(); }
  SECTION("not a number") {
    lift.plan.concrete.form_stripping_strength = std::numeric_limits<double>::quiet_NaN() * MPa;
  }
  const Finding finding = finding_for("strength-below-required", "SL-1", lift.facts());
  CHECK(finding.result == Result::missing);
  check_says_why(finding);
}

TEST_CASE("evidence-age: within its limit passes, at the limit passes, a second later is missing") {
  SlabLift lift;
  const auto lifted_after = [&](long long seconds) {
    lift.stage().at = plan::Timestamp{tested_second + seconds, false, "then"};
    return finding_for("evidence-age", "SL-1", lift.facts());
  };
  CHECK(lifted_after(0).result == Result::pass);
  CHECK(lifted_after(12 * 3600).result == Result::pass);
  CHECK(si_number(lifted_after(12 * 3600).demand.value()) == Approx(12.0));
  const Finding late = lifted_after(12 * 3600 + 1);
  CHECK(late.result == Result::missing);
  check_says_why(late);
  CHECK(lifted_after(-1).result == Result::missing);  // lifted before the test
}

TEST_CASE("evidence-age: no limit stated is a note, no time of the test is missing") {
  SlabLift lift;
  lift.plan.concrete.evidence->valid_for.reset();
  const Finding note = finding_for("evidence-age", "SL-1", lift.facts());
  CHECK(note.result == Result::note);
  CHECK_FALSE(note.text.empty());

  lift.plan.concrete.evidence->tested.reset();
  const Finding missing_time = finding_for("evidence-age", "SL-1", lift.facts());
  CHECK(missing_time.result == Result::missing);
  check_says_why(missing_time);
}
