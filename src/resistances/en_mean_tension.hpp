// Mean tensile strength of normal concrete by EN 1992-1-1.
#pragma once

#include "record/trace.hpp"
#include "tables/en_1992_4.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// `f_ck`: cylinder strength at the lift, above zero.
Stress en_mean_tension(Stress f_ck, const tables::En1992Tension& en, Trace& trace);

}  // namespace firstpick::resistances
