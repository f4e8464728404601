#pragma once

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// Nominal steel strength of one insert in tension, N_sa (ACI 318-19 17.6.1).
Outcome<Resistance<Force>> steel_tension(const HeadedInsert& insert, Trace& trace);

}  // namespace firstpick::resistances
