// Modulus of elasticity of concrete at the strength of the lift.
#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// Not assessed: a strength that is not above zero and finite; a concrete that is not normalweight.
Outcome<Stress> concrete_modulus(const plan::Concrete& concrete, Stress strength, const tables::RuleSet& rules,
                                 const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::resistances
