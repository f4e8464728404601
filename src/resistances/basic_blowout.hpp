#pragma once

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// N_sb of ACI 318-19 17.6.4.1, without the factor of a corner. Says nothing of whether the failure occurs.
Force basic_blowout(Length c_a1, Area A_brg, Ratio lambda_a, Stress f_c,
                    const tables::HeadedInsertModel& model, Trace& trace);

// Whether every number that the blowout formulas take of an insert is finite and above zero; and the answer
// if not.
bool is_described_for_blowout(const HeadedInsert& insert, Length c_a1, Stress f_c);
NotAssessed not_described_for_blowout(const HeadedInsert& insert);

}  // namespace firstpick::resistances
