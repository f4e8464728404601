// The concrete strength that this lift may count on, and the strength it needs.
#pragma once

#include <optional>
#include <string>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::strength {

// The strength shown by the plan's own specimens, as cylinder strength: what the rule set counts of them.
// Not assessed: no evidence, no results, too few results, specimen or cure not stated, cured under standard
// conditions, a result that is not positive and finite, results farther apart than the rule set's widest range,
// a specimen kind the tables do not hold, a mean or bound that counted_strength refuses.
Outcome<Stress> usable_strength(const plan::Concrete& concrete, const tables::RuleSet& rules,
                                const tables::Tables& tables, Trace& trace);

// In words: "lowest of 3 field-cured cylinders 4x8 in, tested 2026-03-03 07:10"; for reports.
std::string basis_of(const plan::Concrete& concrete, const tables::RuleSet& rules);

// The larger of the strength that the drawing requires for this stage and the rule set's minimum.
// `mass` of the piece, the most it may have: where the rule set asks more of heavy pieces. Not known: taken as heavy.
// Not assessed: the drawing's strength is not in the plan, or is not positive and finite.
Outcome<Stress> required_strength(plan::StageKind stage, const plan::Concrete& concrete,
                                  const tables::RuleSet& rules, Trace& trace, std::optional<Mass> mass = {});

// The strength to put into the anchor formulas: not above the most they credit; below the least they cover
// either refused or lowered so that a square-root law falls in proportion to strength, by the rule set.
Outcome<Stress> formula_strength(Stress usable, const tables::RuleSet& rules, Trace& trace);

}  // namespace firstpick::strength
