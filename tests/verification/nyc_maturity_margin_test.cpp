// New York City Building Code, BC 3305.3.5.1.3 (text read): maturity may stand in for field-cured cylinders only if
// its estimate is at least 500 psi above the strength specified for removing forms. Needed 3000 psi: an estimate of
// 3400 psi does not do, one of 3500 psi does. The rule set "us" is told in the test to take maturity.
//
// Outside  src/strength, tables/rules/us.toml

#include "checks/compare.hpp"
#include "strength/maturity_estimate.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Result;

namespace {

strength::TemperatureLog warm_log() {
  strength::TemperatureLog log{.file = "log.csv", .sensor = "corner", .readings = {}, .doubts = {}};
  for (long long i = 0; i < 4; ++i)
    log.readings.push_back({plan::Timestamp{1800 * i, true, "reading"},
                            Temperature::from_value(293.15 + static_cast<double>(i)), {}, true});
  return log;
}

Outcome<Stress> credited(double estimate_psi, const tables::RuleSet& rules) {
  Trace trace;
  const strength::MaturityEstimate estimate{.strength = estimate_psi * psi};
  const strength::CompanionCheck near{.measured = 2000.0 * psi, .estimated = 2010.0 * psi, .within = true};
  return strength::creditable_strength(estimate, warm_log(), {near}, rules, us_tables(), trace);
}

Result result_of(double needed_psi, double estimate_psi) {
  tables::RuleSet rules = us_rules();
  rules.maturity.value = tables::MaturityUse::validated_with_margin;
  return checks::compare<Stress>(Demand<Stress>{needed_psi * psi},
                                 Resistance<Stress>{assessed(credited(estimate_psi, rules))})
      .result;
}

}  // namespace

TEST_CASE("BC 3305.3.5.1.3: an estimate of 3400 psi is not enough for 3000 psi, one of 3500 psi is") {
  CHECK(result_of(3000.0, 3400.0) == Result::fail);
  CHECK(result_of(3000.0, 3499.0) == Result::fail);
  CHECK(result_of(3000.0, 3500.0) == Result::pass);
}

TEST_CASE("BC 3305.3.5.1.3: the rule set as shipped takes no maturity at all") {
  CHECK(why_not(credited(9000.0, us_rules())) == "the rule set takes no strength from maturity alone");
}
