// Edges of the required strength: src/strength/required_strength.cpp.

#include <cmath>
#include <limits>

#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

Outcome<Stress> to_strip(Stress drawing, const tables::RuleSet& rules) {
  plan::Concrete concrete;
  concrete.form_stripping_strength = drawing;
  Trace trace;
  return strength::required_strength(plan::StageKind::strip, concrete, rules, trace);
}

}  // namespace

TEST_CASE("required strength: a drawing's strength that is not above zero and finite is not assessed") {
  const double bad = GENERATE(as<double>{}, 0.0, -2500.0, nan_number, infinite);
  CAPTURE(bad);
  CHECK(why_not(to_strip(bad * psi, hand_made_rules())) == "form_stripping_strength is not a usable number");
}

TEST_CASE("required strength: a rule set's minimum that is negative or no number is not assessed") {
  tables::RuleSet rules = hand_made_rules();
  const double bad = GENERATE(as<double>{}, -1.0, nan_number, infinite);
  CAPTURE(bad);
  rules.minimum_strength.value = bad * psi;
  CHECK(why_not(to_strip(2500.0 * psi, rules)) ==
        "the minimum strength of the rule set is not a usable number");
}

TEST_CASE("required strength: at, one step under and one step over the rule set's minimum") {
  const Stress minimum = hand_made_rules().minimum_strength.value;
  const Stress under = Stress::from_value(std::nextafter(minimum.value(), 0.0));
  const Stress over = Stress::from_value(std::nextafter(minimum.value(), infinite));
  CHECK(assessed(to_strip(under, hand_made_rules())) == minimum);
  CHECK(assessed(to_strip(minimum, hand_made_rules())) == minimum);
  CHECK(assessed(to_strip(over, hand_made_rules())) == over);
}
