// N_b: breakout strength in tension of one insert in cracked concrete, far from edges and other inserts.
#pragma once

#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// The two forms of ACI 318-19 17.6.2.2. f_c is the strength for the formulas; nothing is limited here.
Force basic_breakout_root(Length h_ef, Ratio lambda_a, Stress f_c,
                          const tables::HeadedInsertModel& model);  // h_ef^1.5
Force basic_breakout_deep(Length h_ef, Ratio lambda_a, Stress f_c,
                          const tables::HeadedInsertModel& model);  // h_ef^(5/3)

// What the program uses: the 1.5 power, or the 5/3 power where that form is allowed and gives less.
Force basic_breakout(Length h_ef, Ratio lambda_a, Stress f_c, const tables::HeadedInsertModel& model,
                     Trace& trace);

}  // namespace firstpick::resistances
