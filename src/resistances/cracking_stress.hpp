// Tension in bending at which the uncracked piece cracks.
#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// Not assessed: a kind of concrete that is not in the tables, a strength that is not usable.
// `depth`: of the piece as it bends, or more.
Outcome<Resistance<Stress>> cracking_stress(const plan::Concrete& concrete, Stress strength, Length depth,
                                            const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::resistances
