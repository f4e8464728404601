#pragma once

#include "resistances/shear_breakout.hpp"

namespace firstpick::resistances {

// The c_a1 of the shear formulas: that of the edge, or less where the section is narrow and thin
// (ACI 318-19 17.7.2.1.2).
Length edge_distance_in_section(const ShearEdge& edge, const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
