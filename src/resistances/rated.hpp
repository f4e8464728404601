#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::resistances {

// Load at which a rated insert fails by its supplier's declaration, at the strength of this lift: before
// any factor of the rule set. `usable`: the strength shown by specimens. Not assessed: no rating, or one
// without the strength it is declared at or the factor it includes.
Outcome<Resistance<Force>> rated(const plan::Insert& insert, Stress usable, const tables::RuleSet& rules,
                                 Trace& trace);

}  // namespace firstpick::resistances
