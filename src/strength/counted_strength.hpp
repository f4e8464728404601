// Which strength a set of specimen results counts for, by the rule set's choice, before conversion.
#pragma once

#include <string>
#include <string_view>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::strength {

struct CountedStrength {
  Stress value{};
  std::string_view symbol;  // as the step that gives it calls it
};

// Results must be there and each positive and finite; number, specimen and cure are the caller's to check.
// Not assessed: the mean of results that lie too far apart, or of which no limit on that is known; a bound
// that cannot be computed or is not above zero, or that would rest on a scatter of zero.
Outcome<CountedStrength> counted_strength(const plan::Evidence& evidence, const tables::RuleSet& rules,
                                          const tables::Tables& tables, Trace& trace);

// "lowest", "mean", "EN 1990 5 % fractile", "tolerance bound": the choice in words, for every output.
std::string words_for_choice(const tables::RuleSet& rules);

}  // namespace firstpick::strength
