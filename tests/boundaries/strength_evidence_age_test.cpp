// Edges of the age of the evidence: src/strength/evidence_age.cpp.

#include <limits>

#include "strength/evidence_age.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

bool passes(const plan::Concrete& concrete, const plan::Stage& stage) {
  Trace trace;
  return is_assessed(strength::evidence_age(concrete, stage, hand_made_rules(), trace));
}

plan::Stage lift_after_test(long long seconds) {
  plan::Stage stage;
  stage.at = plan::Timestamp{tested_second + seconds, false, "lift"};
  return stage;
}

}  // namespace

TEST_CASE("evidence age: tested at the youngest age of the rule set passes, one second sooner it does not") {
  plan::Concrete concrete = concrete_with_evidence();
  const auto tested_after = [&](long long seconds) {
    concrete.evidence->tested->seconds = cast_second + seconds;
    return passes(concrete, {});
  };
  CHECK(tested_after(4 * 3600));
  CHECK_FALSE(tested_after(4 * 3600 - 1));
  CHECK_FALSE(tested_after(300));
  CHECK_FALSE(tested_after(1));
  CHECK_FALSE(tested_after(0));
  CHECK_FALSE(tested_after(-1));
}

TEST_CASE("evidence age: a valid_for at the longest of the rule set passes, a second more does not") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 7.0 * day;
  CHECK(passes(concrete, lift_after_test(3600)));
  concrete.evidence->valid_for = 7.0 * day + 1.0 * second;
  CHECK_FALSE(passes(concrete, lift_after_test(3600)));
}

TEST_CASE("evidence age: a lift at the second of the test passes, one second before it does not") {
  CHECK(passes(concrete_with_evidence(), lift_after_test(0)));
  CHECK_FALSE(passes(concrete_with_evidence(), lift_after_test(-1)));
}

TEST_CASE("evidence age: a lift at the end of valid_for passes, one second later it does not") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for = 24.0 * hour;
  CHECK(passes(concrete, lift_after_test(24 * 3600)));
  CHECK(passes(concrete, lift_after_test(24 * 3600 - 1)));
  CHECK_FALSE(passes(concrete, lift_after_test(24 * 3600 + 1)));
}

TEST_CASE("evidence age: without valid_for the longest of the rule set counts: at its end a note, a second later not") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->valid_for.reset();
  CHECK(passes(concrete, lift_after_test(7 * 24 * 3600)));
  CHECK_FALSE(passes(concrete, lift_after_test(7 * 24 * 3600 + 1)));
}

TEST_CASE("evidence age: a valid_for that is not above zero and finite is not assessed") {
  plan::Concrete concrete = concrete_with_evidence();
  const double bad =
      GENERATE(0.0, -24.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity());
  CAPTURE(bad);
  concrete.evidence->valid_for = bad * hour;
  CHECK_FALSE(passes(concrete, lift_after_test(0)));
}

TEST_CASE("evidence age: moments at the ends of the clock do not overflow into a pass") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->cast->seconds = std::numeric_limits<long long>::max();
  concrete.evidence->tested->seconds = std::numeric_limits<long long>::min();
  CHECK_FALSE(passes(concrete, {}));
}
