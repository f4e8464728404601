#pragma once

#include <optional>

#include "resistances/insert_group.hpp"

namespace firstpick::resistances {

// Nominal side-face blowout strength, N_sb (ACI 318-19 17.6.4.1). Empty: the failure does not occur, because
// h_ef <= 2.5 c_a1. f_c: the strength for the formulas.
Outcome<std::optional<Resistance<Force>>> side_blowout(const HeadedInsert& insert, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace);

// The same of a row of blowout_rows(), N_sbg (17.6.4.2), against the sum of the tensions of the row. `eccentricity`:
// along the edge, from the middle of the row to that sum; ACI 318 does not read it.
Outcome<std::optional<Resistance<Force>>> side_blowout(Group row, const Direction& towards, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace,
                                                       Length eccentricity = Length{});

}  // namespace firstpick::resistances
