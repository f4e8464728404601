#pragma once

#include "resistances/group_layout.hpp"

namespace firstpick::resistances {

// The h_ef of the breakout formulas for inserts of depth `h_ef` that stand so: h_ef itself while no more
// than two edges are nearer than 1.5 h_ef, else less (ACI 318-19 17.6.2.1.2).
Length depth_near_edges(Length h_ef, const GroupLayout& layout, const tables::HeadedInsertModel& model,
                        Trace& trace);

}  // namespace firstpick::resistances
