// VicRoads standard specification, section 620 Precast Concrete Units, clause 620.03 (a copy was read,
// edition not shown): a unit of five tonnes or less leaves its form at 10 MPa, a heavier one at 20 MPa.
// The shipped rule set strength-by-mass chooses by the mass of the piece. The pairs of mass and strength are ours. The limits
// pass. A mass that is not known counts as heavy.
//
// Outside  strength-below-required, tables/rules/strength-by-mass.toml

#include "checks/compare.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Result;

namespace {

Result may_strip(std::optional<Mass> unit, Stress shown) {
  const tables::RuleSet& rules = us_tables().rule_sets.at("strength-by-mass");
  plan::Concrete concrete;
  concrete.form_stripping_strength = 9.0 * MPa;  // the drawing asks for less than either
  Trace trace;
  const Stress needed =
      assessed(strength::required_strength(plan::StageKind::strip, concrete, rules, trace, unit));
  return checks::compare<Stress>(Demand<Stress>{needed}, Resistance<Stress>{shown}).result;
}

Result may_strip(double mass_t, Stress shown) { return may_strip(mass_t * tonne, shown); }

}  // namespace

TEST_CASE("620.03: five tonnes or less at 10 MPa") {
  CHECK(may_strip(4.9, 12.0 * MPa) == Result::pass);
  CHECK(may_strip(5.0, 10.0 * MPa) == Result::pass);
  CHECK(may_strip(5.0, 9.99 * MPa) == Result::fail);
  CHECK(may_strip(5.0 * (1.0 + 1e-15), 10.0 * MPa) == Result::pass);  // the last bits of the same mass
}

TEST_CASE("620.03: above five tonnes at 20 MPa") {
  CHECK(may_strip(5.01, 12.0 * MPa) == Result::fail);
  CHECK(may_strip(5.000001, 19.9 * MPa) == Result::fail);
  CHECK(may_strip(10.0, 2600.0 * psi) == Result::fail);
  CHECK(may_strip(10.0, 20.0 * MPa) == Result::pass);
}

TEST_CASE("620.03: a mass that is not known, or is no number, counts as heavy") {
  CHECK(may_strip(std::nullopt, 19.9 * MPa) == Result::fail);
  CHECK(may_strip(std::nullopt, 20.0 * MPa) == Result::pass);
  CHECK(may_strip(std::numeric_limits<double>::quiet_NaN() * tonne, 19.9 * MPa) == Result::fail);
}
