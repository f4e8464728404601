#include <cmath>

#include "strength/evidence_age.hpp"

#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

plan::Timestamp after_test(double hours) {
  return {tested_second + static_cast<long long>(hours * 3600.0), false, "the lift"};
}

Outcome<strength::EvidenceAge> age_of(const plan::Concrete& concrete, const plan::Stage& stage) {
  Trace trace;
  return strength::evidence_age(concrete, stage, hand_made_rules(), trace);
}

}  // namespace

TEST_CASE("the age of the concrete at its test is counted from the pour") {
  const strength::EvidenceAge age = assessed(age_of(concrete_with_evidence(), {}));
  CHECK(in(hour, age.at_test) == Approx(14.0 + 40.0 / 60.0));
  CHECK_FALSE(age.since_test.has_value());
  CHECK_FALSE(age.limit.has_value());
}

TEST_CASE("evidence without any limit on its age passes with a note") {
  CHECK(assessed(age_of(concrete_with_evidence(), {})).note ==
        "the plan states no limit on the age of the strength evidence");
  plan::Stage stage;
  stage.at = after_test(100.0);
  const auto age = assessed(age_of(concrete_with_evidence(), stage));
  CHECK(age.note == "the plan states no limit on the age of the strength evidence");
  CHECK(in(hour, age.since_test.value()) == Approx(100.0));
}

TEST_CASE("within its limit the evidence needs no note") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 24.0 * hour;
  plan::Stage stage;
  stage.at = after_test(5.0);
  const auto age = assessed(age_of(concrete, stage));
  CHECK(age.note.empty());
  CHECK(in(hour, age.since_test.value()) == Approx(5.0));
  CHECK(in(hour, age.limit.value()) == Approx(24.0));
}

TEST_CASE("evidence older than its limit at the lift is not assessed") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 24.0 * hour;
  plan::Stage stage;
  stage.at = after_test(26.0);
  CHECK(why_not(age_of(concrete, stage)) == "the test is 26 h old at the lift and was to be used for 24 h");
}

TEST_CASE("a limit that nothing can be compared with is not assessed") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 24.0 * hour;
  CHECK(why_not(age_of(concrete, {})) ==
        "the evidence is limited by valid_for, but when the lift is to be made is not stated");
  CHECK(remedy_for(age_of(concrete, {})) == "write `at` in [[stage]]");
}

TEST_CASE("evidence that does not say when is not assessed") {
  plan::Concrete concrete = concrete_with_evidence();
  SECTION("cast") {
    concrete.evidence->cast.reset();
    CHECK(why_not(age_of(concrete, {})) == "when the piece was cast is not stated");
  }
  SECTION("tested") {
    concrete.evidence->tested.reset();
    CHECK(why_not(age_of(concrete, {})) == "when the specimens were tested is not stated");
  }
  SECTION("evidence at all") {
    concrete.evidence.reset();
    CHECK(why_not(age_of(concrete, {})) == "no strength test of this piece is in the plan");
  }
}

TEST_CASE("the evidence of another pour is found out by the clock") {
  plan::Concrete concrete = concrete_with_evidence();
  std::swap(concrete.evidence->cast, concrete.evidence->tested);
  CHECK(why_not(age_of(concrete, {})) == "tested 2026-03-02 16:30 is not after cast 2026-03-03 07:10");
}

TEST_CASE("a lift before the test is not assessed, with or without a limit") {
  plan::Concrete concrete = concrete_with_evidence();
  if (GENERATE(true, false)) concrete.evidence->valid_for = 24.0 * hour;
  plan::Stage stage;
  stage.at = after_test(-1.0);
  CHECK(why_not(age_of(concrete, stage)) == "the lift at the lift is before the test at 2026-03-03 07:10");
}

TEST_CASE("moments with and without a zone offset are not compared") {
  plan::Concrete concrete = concrete_with_evidence();
  plan::Stage stage;
  stage.at = after_test(1.0);
  SECTION("cast and tested") {
    concrete.evidence->cast->has_offset = true;
    CHECK(why_not(age_of(concrete, stage)) ==
          "of `cast` and `tested` one has a zone offset and the other has none");
  }
  SECTION("tested and lift") {
    stage.at->has_offset = true;
    CHECK(why_not(age_of(concrete, stage)) ==
          "of `tested` and the stage's `at` one has a zone offset and the other has none");
  }
  SECTION("all three with one") {
    concrete.evidence->cast->has_offset = concrete.evidence->tested->has_offset = stage.at->has_offset = true;
    CHECK(in(hour, assessed(age_of(concrete, stage)).since_test.value()) == Approx(1.0));
  }
}

TEST_CASE("the steps of the age are in hours") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 24.0 * hour;
  plan::Stage stage;
  stage.at = after_test(5.0);
  Trace trace = Trace::recording();
  assessed(strength::evidence_age(concrete, stage, hand_made_rules(), trace));
  CHECK(step_named(trace, "t_test").result.number == Approx(14.0 + 40.0 / 60.0));
  CHECK(step_named(trace, "t_since").result.number == Approx(5.0));
  CHECK(step_named(trace, "t_limit").result.number == Approx(24.0));
}

TEST_CASE("the evidence holds until its limit after the test, whole minutes, rounded down") {
  plan::Concrete concrete = concrete_with_evidence();
  CHECK_FALSE(strength::evidence_until(concrete).has_value());  // no limit stated
  concrete.evidence->tested->seconds = 0;
  concrete.evidence->valid_for = 12.0 * hour + 59.0 * second;
  const auto until = strength::evidence_until(concrete);
  REQUIRE(until.has_value());
  CHECK(until->seconds == 12 * 3600);
  CHECK(until->text == "1970-01-01 12:00");

  concrete.evidence->tested->has_offset = true;
  concrete.evidence->tested->offset_seconds = -5 * 3600;
  CHECK(strength::evidence_until(concrete)->text == "1970-01-01 07:00 -05:00");
}

TEST_CASE("evidence that cannot carry a lift has no last moment") {
  plan::Concrete concrete = concrete_with_evidence();
  for (const Duration& limit : {Duration{}, -1.0 * hour, Duration::from_value(std::nan("")), 1e9 * hour}) {
    concrete.evidence->valid_for = limit;
    CHECK_FALSE(strength::evidence_until(concrete).has_value());
  }
  concrete.evidence->valid_for = 12.0 * hour;
  concrete.evidence->tested.reset();
  CHECK_FALSE(strength::evidence_until(concrete).has_value());
  concrete.evidence.reset();
  CHECK_FALSE(strength::evidence_until(concrete).has_value());
}
