#pragma once

#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// Utilization of an insert in tension and shear at once (ACI 318-19 17.8), from the largest utilization of
// each. Not a number or negative on either side gives not a number.
Ratio interaction_utilization(Ratio tension, Ratio shear, const tables::HeadedInsertModel& model,
                              Trace& trace);

}  // namespace firstpick::resistances
