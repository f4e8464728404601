// How much heavier the piece becomes by being moved.
#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::loads {

// Not assessed: no factor for this stage in the rule set and none in the plan; a factor below 1 or not
// finite; a crane that is not in the plan; a hoist class that is not in the tables; a hoist speed that is
// negative or not finite.
Outcome<Ratio> dynamic_factor(const plan::Plan& plan, const plan::Stage& stage, const tables::RuleSet& rules,
                              const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::loads
