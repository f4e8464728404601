// VicRoads standard specification, section 620 Precast Concrete Units, clause 620.03 (a copy was read,
// edition not shown): a unit of five tonnes or less leaves its form at 10 MPa, a heavier one at 20 MPa.
// firstpick does not choose the minimum by mass: the test does, and puts it into the rule set. The pairs of
// mass and strength are ours. The limits pass.
//
// Outside  strength-below-required

#include "checks/compare.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Result;

namespace {

Stress minimum_of_620_03(Mass unit) { return unit <= 5.0 * tonne ? 10.0 * MPa : 20.0 * MPa; }

Result may_strip(double mass_t, Stress shown) {
  tables::RuleSet rules = us_rules();
  rules.minimum_strength.value = minimum_of_620_03(mass_t * tonne);
  plan::Concrete concrete;
  concrete.form_stripping_strength = 10.0 * MPa;  // the drawing names the lower of the two
  Trace trace;
  const Stress needed = assessed(strength::required_strength(plan::StageKind::strip, concrete, rules, trace));
  return checks::compare<Stress>(Demand<Stress>{needed}, Resistance<Stress>{shown}).result;
}

}  // namespace

TEST_CASE("620.03: five tonnes or less at 10 MPa") {
  CHECK(may_strip(4.9, 12.0 * MPa) == Result::pass);
  CHECK(may_strip(5.0, 10.0 * MPa) == Result::pass);
  CHECK(may_strip(5.0, 9.99 * MPa) == Result::fail);
}

TEST_CASE("620.03: above five tonnes at 20 MPa") {
  CHECK(may_strip(5.01, 12.0 * MPa) == Result::fail);
  CHECK(may_strip(10.0, 2600.0 * psi) == Result::fail);
  CHECK(may_strip(10.0, 20.0 * MPa) == Result::pass);
}
