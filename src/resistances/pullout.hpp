#pragma once

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// Nominal pullout strength of one headed insert, N_pn (ACI 318-19 17.6.3). f_c: the strength for the
// formulas.
Outcome<Resistance<Force>> pullout(const HeadedInsert& insert, Stress f_c,
                                   const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
