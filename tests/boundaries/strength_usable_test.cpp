// Edges of the usable strength and of the specimen conversion: src/strength/usable_strength.cpp,
// specimen.cpp.

#include <cmath>
#include <limits>

#include "strength/specimen.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const double nan_number = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

Outcome<Stress> usable(const plan::Concrete& concrete, const tables::RuleSet& rules,
                       const tables::Tables& tables) {
  Trace trace;
  return strength::usable_strength(concrete, rules, tables, trace);
}

}  // namespace

TEST_CASE("usable strength: one result fewer than asked is not assessed, as many as asked are") {
  tables::RuleSet rules = hand_made_rules();
  rules.minimum_results.value = Ratio::from_value(3.0);
  plan::Concrete concrete = concrete_with_evidence();
  CHECK(is_assessed(usable(concrete, rules, hand_made_tables())));
  concrete.evidence->results.pop_back();
  CHECK(why_not(usable(concrete, rules, hand_made_tables())) ==
        "2 of the 3 results that the rule set asks for");
}

TEST_CASE("usable strength: a number of results that is no number is not assessed") {
  tables::RuleSet rules = hand_made_rules();
  rules.minimum_results.value = Ratio::from_value(nan_number);
  CHECK_FALSE(is_assessed(usable(concrete_with_evidence(), rules, hand_made_tables())));
}

TEST_CASE("usable strength: results at the widest range of the rule set count, a step farther apart they do not") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results = {17.0 * MPa, 23.0 * MPa};  // 6 / 20 = 0.3
  tables::RuleSet rules = hand_made_rules();
  rules.widest_range.value = Ratio::from_value(0.3 + 1e-12);
  CHECK(is_assessed(usable(concrete, rules, hand_made_tables())));
  rules.widest_range.value = Ratio::from_value(0.3 - 1e-12);
  CHECK(why_not(usable(concrete, rules, hand_made_tables())).starts_with("the results lie 3"));
  rules.widest_range.value = Ratio::from_value(nan_number);
  CHECK_FALSE(is_assessed(usable(concrete, rules, hand_made_tables())));
}

TEST_CASE("usable strength: the least result above zero counts as it is") {
  plan::Concrete concrete = concrete_with_evidence();
  for (Stress& result : concrete.evidence->results)
    result = Stress::from_value(std::numeric_limits<double>::denorm_min());
  CHECK(assessed(usable(concrete, hand_made_rules(), hand_made_tables())) == concrete.evidence->results[1]);
  concrete.evidence->results[1] = Stress::from_value(-0.0);
  CHECK_FALSE(is_assessed(usable(concrete, hand_made_rules(), hand_made_tables())));
}

TEST_CASE("specimen: within 1 mm of its entry it is known, past that it is not") {
  const double off_mm = GENERATE(-0.99, 0.0, 0.99);
  const double far_mm = GENERATE(-1.01, 1.01);
  CAPTURE(off_mm, far_mm);
  const auto known = [](double width_mm, double height_mm) {
    return is_assessed(strength::to_cylinder({plan::SpecimenShape::cylinder, width_mm * mm, height_mm * mm},
                                             hand_made_tables()));
  };
  CHECK(known(101.6 + off_mm, 203.2));
  CHECK(known(101.6, 203.2 + off_mm));
  CHECK_FALSE(known(101.6 + far_mm, 203.2));
  CHECK_FALSE(known(101.6, 203.2 + far_mm));
}

TEST_CASE("specimen: a size that is no number is not known") {
  const double bad = GENERATE(as<double>{}, nan_number, infinite, -infinite);
  CHECK_FALSE(is_assessed(
      strength::to_cylinder({plan::SpecimenShape::cylinder, bad * mm, 203.2 * mm}, hand_made_tables())));
  CHECK_FALSE(is_assessed(
      strength::to_cylinder({plan::SpecimenShape::cylinder, 101.6 * mm, bad * mm}, hand_made_tables())));
}

TEST_CASE("specimen: a conversion that is not above zero and finite is not assessed") {
  tables::Tables tables = hand_made_tables();
  const double bad = GENERATE(as<double>{}, 0.0, -0.8, nan_number, infinite);
  CAPTURE(bad);
  tables.specimens.at("cylinder 4x8 in").to_cylinder.value = Ratio::from_value(bad);
  CHECK(why_not(usable(concrete_with_evidence(), hand_made_rules(), tables)) ==
        "the conversion of the specimen 'cylinder 4x8 in' in the tables is not a usable number");
}
