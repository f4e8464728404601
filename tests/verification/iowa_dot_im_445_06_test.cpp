// Iowa DOT Materials Instructional Memorandum IM 445.06, precast noise wall panels (text read, undated): form
// removal and moving at 2,000 psi at least, or as the plan says; at least 9 cylinders per lot. The rule set
// "us" is given these two values in the test. Cylinders are 6x12 in, so that no conversion takes part. The
// limit itself passes, without tolerance.
//
// Outside  strength-below-required, strength-evidence

#include "checks/compare.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Result;

namespace {

tables::RuleSet iowa_rules() {
  tables::RuleSet rules = us_rules();
  rules.minimum_strength.value = 2000.0 * psi;
  rules.minimum_results.value = Ratio::from_value(9.0);
  return rules;
}

plan::Concrete panel(double on_plan_psi, double lowest_psi, std::size_t cylinders) {
  plan::Evidence evidence;
  evidence.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 6.0 * inch, 12.0 * inch};
  evidence.cure = plan::Cure::field;
  evidence.results.assign(cylinders - 1, 2600.0 * psi);
  evidence.results.push_back(lowest_psi * psi);
  plan::Concrete concrete;
  concrete.form_stripping_strength = on_plan_psi * psi;
  concrete.evidence = evidence;
  return concrete;
}

Result may_strip(double on_plan_psi, double lowest_psi) {
  const plan::Concrete concrete = panel(on_plan_psi, lowest_psi, 9);
  Trace trace;
  const Stress needed =
      assessed(strength::required_strength(plan::StageKind::strip, concrete, iowa_rules(), trace));
  const Stress shown = assessed(strength::usable_strength(concrete, iowa_rules(), us_tables(), trace));
  return checks::compare<Stress>(Demand<Stress>{needed}, Resistance<Stress>{shown}).result;
}

}  // namespace

TEST_CASE("IM 445.06: form removal and moving at 2,000 psi") {
  CHECK(may_strip(2000.0, 1999.0) == Result::fail);
  CHECK(may_strip(2000.0, 2000.0) == Result::pass);
}

TEST_CASE("IM 445.06: what the plan says governs where it is more") {
  CHECK(may_strip(2500.0, 2300.0) == Result::fail);
  CHECK(may_strip(2500.0, 2500.0) == Result::pass);
}

TEST_CASE("IM 445.06: a plan that says less does not lower the minimum") {
  CHECK(may_strip(1500.0, 1999.0) == Result::fail);
  CHECK(may_strip(1500.0, 2000.0) == Result::pass);
}

TEST_CASE("IM 445.06: at least 9 cylinders") {
  Trace trace;
  CHECK(is_assessed(strength::usable_strength(panel(2000.0, 2500.0, 9), iowa_rules(), us_tables(), trace)));
  CHECK(why_not(strength::usable_strength(panel(2000.0, 2500.0, 8), iowa_rules(), us_tables(), trace)) ==
        "8 of the 9 results that the rule set asks for");
}
