#pragma once

#include "resistances/insert_group.hpp"

namespace firstpick::resistances {

// Nominal pryout strength in shear, V_cp or V_cpg (ACI 318-19 17.7.3), from the tension breakout strength
// of the same inserts, with the eccentricity of the shear.
Outcome<Resistance<Force>> pryout(Group group, const Outcome<Resistance<Force>>& breakout,
                                  const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
