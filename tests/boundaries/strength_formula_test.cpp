// Edges of the strength for the anchor formulas: src/strength/formula_strength.cpp.

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

Outcome<Stress> formula(Stress usable, const tables::RuleSet& rules) {
  Trace trace;
  return strength::formula_strength(usable, rules, trace);
}
Stress one_step_under(Stress s) { return Stress::from_value(std::nextafter(s.value(), 0.0)); }
Stress one_step_over(Stress s) { return Stress::from_value(std::nextafter(s.value(), infinite)); }

}  // namespace

TEST_CASE("formula strength: continuous at the floor") {
  const tables::RuleSet rules = hand_made_rules();
  const Stress floor = rules.headed.f_c_least.value;
  CHECK(assessed(formula(floor, rules)) == floor);
  CHECK(assessed(formula(one_step_under(floor), rules)) < floor);
  CHECK(in(psi, assessed(formula(one_step_under(floor), rules))) == Approx(in(psi, floor)).epsilon(1e-14));
  CHECK(assessed(formula(one_step_over(floor), rules)) > floor);
}

TEST_CASE("formula strength: where the rule set refuses, the floor itself is still covered") {
  tables::RuleSet rules = hand_made_rules();
  rules.below_floor.value = tables::BelowFloor::refuse;
  const Stress floor = rules.headed.f_c_least.value;
  CHECK(is_assessed(formula(floor, rules)));
  CHECK_FALSE(is_assessed(formula(one_step_under(floor), rules)));
}

TEST_CASE("formula strength: at, one step under and one step over the most that is credited") {
  const tables::RuleSet rules = hand_made_rules();
  const Stress most = rules.headed.f_c_most.value;
  CHECK(assessed(formula(one_step_under(most), rules)) == one_step_under(most));
  CHECK(assessed(formula(most, rules)) == most);
  CHECK(assessed(formula(one_step_over(most), rules)) == most);
}

TEST_CASE("formula strength: a strength that is not above zero and finite is not assessed") {
  const double bad = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(bad);
  CHECK(why_not(formula(bad * psi, hand_made_rules())) ==
        "the strength of the concrete is not a usable number");
}

TEST_CASE("formula strength: a range in the rule set that is no range is not assessed") {
  const double least_psi = GENERATE(as<double>{}, 2500.0, 0.0, nan_number, infinite);
  const double most_psi = GENERATE(as<double>{}, 2499.0, nan_number, infinite);
  CAPTURE(least_psi, most_psi);
  tables::RuleSet rules = hand_made_rules();
  rules.headed.f_c_least.value = least_psi * psi;
  rules.headed.f_c_most.value = most_psi * psi;
  CHECK(why_not(formula(3000.0 * psi, rules)) ==
        "the strength range of the anchor formulas in the rule set is not usable");
}

TEST_CASE("formula strength: without a floor there is no range, though the top is good") {
  const double least_psi = GENERATE(as<double>{}, 0.0, -1.0, nan_number, infinite);
  CAPTURE(least_psi);
  tables::RuleSet rules = hand_made_rules();
  rules.headed.f_c_least.value = least_psi * psi;
  CHECK_FALSE(is_assessed(formula(3000.0 * psi, rules)));
}
