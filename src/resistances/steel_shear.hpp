#pragma once

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// Nominal steel strength of one insert in shear, V_sa (ACI 318-19 17.7.1).
Outcome<Resistance<Force>> steel_shear(const HeadedInsert& insert, const tables::HeadedInsertModel& model,
                                       Trace& trace);

}  // namespace firstpick::resistances
