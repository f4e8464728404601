#pragma once

#include "resistances/loop_leg.hpp"

namespace firstpick::resistances {

// What all strands of a loop hold over one strand alone on a thick pin, k = m_n k_o k_h.
Outcome<Ratio> strand_multiplier(const plan::Insert& insert, LoopGrip grip, const tables::LoopModel& model, Trace& trace);

}  // namespace firstpick::resistances
