// Does the report of a strength say what the code did? Every printed formula of `firstpick strength`, for each choice
// of what counts, re-computed from its printed numbers.

#include "support/formula.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/strength_answers.hpp"
#include "support/assessed.hpp"
#include "strength/strength_at_lift.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("specimens: every printed formula gives the printed number, whichever of them counts") {
  using tables::UsableStrength;
  for (const UsableStrength choice :
       {UsableStrength::lowest, UsableStrength::mean, UsableStrength::fractile_variation_known,
        UsableStrength::fractile_variation_unknown, UsableStrength::tolerance_bound}) {
    tables::RuleSet rules = us_rules();
    rules.usable_strength.value = choice;
    Trace trace = Trace::recording();
    assessed(strength::usable_strength(concrete_with_evidence(), rules, us_tables(), trace));
    std::size_t recomputed = 0;
    for (const Trace::Entry& entry : trace.steps()) {
      const Step& step = entry.step;
      REQUIRE_FALSE(step.formula.empty());
      Symbols symbols;
      for (const Term& term : step.given) symbols.emplace(term.symbol, term.number);
      CAPTURE(step.words, step.formula);
      CHECK(value_of(step.formula, symbols) == Approx(step.result.number).epsilon(1e-9));
      ++recomputed;
    }
    CHECK(recomputed >= 2);
  }
}
