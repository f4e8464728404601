#include <limits>

#include "strength/strength_at_lift.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

Outcome<Stress> usable(const plan::Concrete& concrete, const tables::RuleSet& rules = hand_made_rules()) {
  Trace trace;
  return strength::usable_strength(concrete, rules, hand_made_tables(), trace);
}

}  // namespace

TEST_CASE("the lowest result is what the lift may count on") {
  CHECK(in(psi, assessed(usable(concrete_with_evidence()))) == Approx(2550.0));
}

TEST_CASE("the order of the results does not matter") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results = {2700.0 * psi, 2610.0 * psi, 2550.0 * psi};
  CHECK(in(psi, assessed(usable(concrete))) == Approx(2550.0));
}

TEST_CASE("a cube counts for less than a cylinder of the same result") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->specimen = plan::Specimen{plan::SpecimenShape::cube, 150.0 * mm, 150.0 * mm};
  concrete.evidence->results = {21.0 * MPa, 22.4 * MPa, 20.3 * MPa};
  CHECK(in(MPa, assessed(usable(concrete))) == Approx(0.8 * 20.3));
}

TEST_CASE("match-cured specimens count as field-cured ones do") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->cure = plan::Cure::match;
  CHECK(in(psi, assessed(usable(concrete))) == Approx(2550.0));
}

TEST_CASE("standard-cured specimens are no evidence for the lift") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->cure = plan::Cure::standard;
  CHECK(why_not(usable(concrete)) == "standard-cured specimens tell the mix, not the piece in its form");
  CHECK(remedy_for(usable(concrete)) == "test specimens cured with the piece: cure = \"field\" or \"match\"");
}

TEST_CASE("the design strength never stands in for a test") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.design_strength = 8000.0 * psi;
  concrete.evidence.reset();
  CHECK(why_not(usable(concrete)) == "no strength test of this piece is in the plan");
}

TEST_CASE("evidence of which a part is missing is not assessed") {
  plan::Concrete concrete = concrete_with_evidence();
  SECTION("results") {
    concrete.evidence->results.clear();
    CHECK(why_not(usable(concrete)) == "the strength evidence has no results");
  }
  SECTION("specimen") {
    concrete.evidence->specimen.reset();
    CHECK(why_not(usable(concrete)) == "the kind of specimen is not stated");
  }
  SECTION("cure") {
    concrete.evidence->cure.reset();
    CHECK(why_not(usable(concrete)) == "how the specimens were cured is not stated");
  }
  SECTION("size in the tables") {
    concrete.evidence->specimen->width = 5.0 * inch;
    CHECK(why_not(usable(concrete)) == "the tables do not say what a cylinder 5x8 in is worth as a cylinder");
  }
}

TEST_CASE("one result that is no strength spoils the evidence, wherever it stands") {
  plan::Concrete concrete = concrete_with_evidence();
  const double bad = GENERATE(0.0, -2600.0, std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity());
  const auto index = GENERATE(std::size_t{0}, std::size_t{1}, std::size_t{2});
  CAPTURE(bad, index);
  concrete.evidence->results[index] = bad * psi;
  CHECK(why_not(usable(concrete)) ==
        "result " + std::to_string(index + 1) + " of the strength evidence is not a usable number");
}

TEST_CASE("a mean of which no limit on the range is known is not assessed") {
  tables::RuleSet rules = hand_made_rules();
  rules.usable_strength.value = tables::UsableStrength::mean;
  CHECK(why_not(usable(concrete_with_evidence(), rules)) ==
        "the rule set takes the mean of the results, and the tables do not say how far results of cylinders 4x8 "
        "in may lie apart");
}

TEST_CASE("the steps of the strength put in every result and name the conversion") {
  Trace trace = Trace::recording();
  assessed(strength::usable_strength(concrete_with_evidence(), hand_made_rules(), hand_made_tables(), trace));
  const Step lowest = step_named(trace, "f_low");
  CHECK(lowest.formula == "min(f_1, f_2, f_3)");
  REQUIRE(lowest.given.size() == 3);
  CHECK(lowest.given[1].number == Approx(in(MPa, 2550.0 * psi)));
  CHECK(source_ids(lowest) ==
        std::vector<std::string>{"hand-made.usable_strength", "hand-made.minimum_results"});
  const Step strength = step_named(trace, "f_c");
  CHECK(strength.formula == "c * f_low");
  CHECK(source_ids(strength) == std::vector<std::string>{"hand-made.to_cylinder.4x8"});
}

TEST_CASE("a single result is its own lowest, where the rule set asks for no more") {
  tables::RuleSet rules = hand_made_rules();
  rules.minimum_results.value = Ratio::from_value(1.0);
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->results = {2600.0 * psi};
  Trace trace = Trace::recording();
  CHECK(in(psi, assessed(strength::usable_strength(concrete, rules, hand_made_tables(), trace))) ==
        Approx(2600.0));
  CHECK(step_named(trace, "f_low").formula == "f_1");
}
