// Shear stress that concrete without bars holds.
#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::resistances {

// Not assessed: strength or kind of concrete not usable; under EN lightweight concrete.
Outcome<Resistance<Stress>> plain_shear(const plan::Concrete& concrete, Stress strength, const tables::RuleSet& rules,
                                        const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::resistances
