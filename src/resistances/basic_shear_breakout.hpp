#pragma once

#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// V_b of ACI 318-19 17.7.2.2.1. c_a1, f_c: as the formulas are to use them; nothing is limited here.
Force basic_shear_breakout(Length c_a1, Length h_ef, Length d_a, Ratio lambda_a, Stress f_c,
                           const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
