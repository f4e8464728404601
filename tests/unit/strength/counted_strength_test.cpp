#include "strength/counted_strength.hpp"

#include "strength/break_statistics.hpp"
#include "strength/lower_bound.hpp"
#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using tables::UsableStrength;

namespace {

tables::RuleSet rules_that_take(UsableStrength choice) {
  tables::RuleSet rules = hand_made_rules();
  rules.usable_strength.value = choice;
  return rules;
}

tables::Tables tables_with_limits() {
  tables::Tables tables = hand_made_tables();
  tables.specimens.at("cylinder 4x8 in").range_of_two = made_ratio("range_of_two", 0.08);
  tables.specimens.at("cylinder 4x8 in").range_of_three = made_ratio("range_of_three", 0.10);
  return tables;
}

Outcome<Stress> usable(const std::vector<double>& results_MPa, UsableStrength choice) {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results.clear();
  for (const double result : results_MPa) concrete.evidence->results.push_back(result * MPa);
  Trace trace;
  return strength::usable_strength(concrete, rules_that_take(choice), tables_with_limits(), trace);
}

}  // namespace

TEST_CASE("a mean counts while the results lie close together") {
  CHECK(in(MPa, assessed(usable({19.0, 20.0, 21.0}, UsableStrength::mean))) == Approx(20.0));
  CHECK(why_not(usable({18.9, 20.0, 21.1}, UsableStrength::mean)) ==
        "the rule set takes the mean of the results, and the 3 results lie 11.0 % of their mean apart, more than the 10.0 % "
        "of one sample: result 1, 18.9 MPa, is farthest from the mean; every result counts");
  CHECK(why_not(usable({19.0, 20.0, 20.0, 21.0}, UsableStrength::mean)) ==
        "the rule set takes the mean of the results, and how far 4 results may lie apart is not known, only two and "
        "three");
}

TEST_CASE("every bound lies below the mean, and more scatter never raises one") {
  for (const UsableStrength choice : {UsableStrength::lowest, UsableStrength::fractile_variation_known,
                                      UsableStrength::fractile_variation_unknown, UsableStrength::tolerance_bound}) {
    const Stress close = assessed(usable({19.9, 20.0, 20.1}, choice)), wide = assessed(usable({19.0, 20.0, 21.0}, choice));
    CHECK(close < 20.0 * MPa);
    CHECK(wide <= close);
  }
}

TEST_CASE("a known variation is not taken below that of the results") {
  // 10 % known; the results have 14 %.
  const double k = assessed(strength::fractile_factor_known(3, Ratio::from_value(0.05)));
  CHECK(in(MPa, assessed(usable({17.2, 20.0, 22.8}, UsableStrength::fractile_variation_known))) ==
        Approx(20.0 * (1.0 - k * 0.14)));
}

TEST_CASE("a bound at or below zero is no strength") {
  CHECK(why_not(usable({17.2, 22.8}, UsableStrength::tolerance_bound)) ==
        "the tolerance bound of the 5 % fractile at 75 % confidence of the results is not above zero");
}

TEST_CASE("results alike to the last digit: no bound rests on a scatter of zero, whatever their mean rounds to") {
  for (const double each : {20.0, 20.3, 0.1, 23.456789})
    for (const std::size_t n : {3U, 5U, 7U}) {
      CAPTURE(each, n);
      const std::vector<double> alike(n, each);
      CHECK(why_not(usable(alike, UsableStrength::fractile_variation_unknown)) ==
            "the " + std::to_string(n) + " results are alike to the last digit: a scatter of zero proves nothing, and the EN 1990 "
            "5 % fractile, variation unknown, would be their mean");
      CHECK(why_not(usable(alike, UsableStrength::tolerance_bound)) ==
            "the " + std::to_string(n) + " results are alike to the last digit: a scatter of zero proves nothing, and the "
            "tolerance bound of the 5 % fractile at 75 % confidence would be their mean");
    }
  // The lowest asks for no scatter; a known variation is taken instead of theirs, and lowers.
  CHECK(in(MPa, assessed(usable({20.0, 20.0, 20.0}, UsableStrength::lowest))) == Approx(20.0));
  CHECK(assessed(usable({20.0, 20.0, 20.0}, UsableStrength::fractile_variation_known)) < 17.0 * MPa);
  // One digit off, and they have one.
  CHECK(assessed(usable({20.0, 20.0, 20.1}, UsableStrength::tolerance_bound)) < 20.0 * MPa);
}

TEST_CASE("two results are too few for a fractile with unknown variation") {
  CHECK(why_not(usable({20.0, 21.0}, UsableStrength::fractile_variation_unknown)) ==
        "a fractile with unknown variation needs three results");
}

TEST_CASE("the choice is named in the basis of every output") {
  const auto basis = [](UsableStrength choice) {
    return strength::basis_of(concrete_with_evidence(), rules_that_take(choice));
  };
  const std::string rest = "3 field-cured cylinders 4x8 in, tested 2026-03-03 07:10";
  CHECK(basis(UsableStrength::mean) == "mean of " + rest);
  CHECK(basis(UsableStrength::fractile_variation_known) == "EN 1990 5 % fractile, variation known, of " + rest);
  CHECK(basis(UsableStrength::tolerance_bound) ==
        "tolerance bound of the 5 % fractile at 75 % confidence of " + rest);
}

TEST_CASE("an outlier is told, and stays in, one that is not of this concrete is HOLD with all of them") {
  plan::Evidence evidence = *concrete_with_evidence().evidence;
  evidence.results = {20.0 * MPa, 20.2 * MPa, 12.0 * MPa};
  const std::string text = strength::wide_range_text(evidence, tables_with_limits());
  CHECK(text.find("result 3, 12.0 MPa, is farthest from the mean; every result counts") != std::string::npos);
  CHECK(in(MPa, assessed(usable({20.0, 20.2, 15.0}, UsableStrength::lowest))) == Approx(15.0));
  for (const UsableStrength choice : {UsableStrength::lowest, UsableStrength::mean, UsableStrength::tolerance_bound})
    CHECK(why_not(usable({20.0, 20.2, 12.0}, choice)) ==
          "the results lie 47.2 % of their mean apart, more than 30 %: they are not of one concrete");
}

TEST_CASE("factors outside their range are refused") {
  const Ratio five = Ratio::from_value(0.05);
  CHECK_FALSE(is_assessed(strength::fractile_factor_known(0, five)));
  CHECK_FALSE(is_assessed(strength::tolerance_factor(1, five, Ratio::from_value(0.75))));
  for (const double bad : {0.0, 0.5, 1.0, -0.1, std::nan("")}) {
    CAPTURE(bad);
    CHECK_FALSE(is_assessed(strength::fractile_factor_known(3, Ratio::from_value(bad))));
    CHECK_FALSE(is_assessed(strength::fractile_factor_unknown(3, Ratio::from_value(bad))));
    CHECK_FALSE(is_assessed(strength::tolerance_factor(3, Ratio::from_value(bad), Ratio::from_value(0.75))));
  }
  for (const double bad : {0.49, 1.0, std::nan("")})
    CHECK_FALSE(is_assessed(strength::tolerance_factor(3, five, Ratio::from_value(bad))));
}
