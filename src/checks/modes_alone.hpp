// What one headed insert holds alone, in each of its modes.
#pragma once

#include <vector>

#include "checks/mode_check.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Why a mode of an insert cannot be evaluated, whatever pulls: the plan does not describe the insert, or there
// is no strength for the formulas of concrete. Null: it can.
const NotAssessed* gap_in(Mode mode, const StageFacts& facts, std::size_t insert);

// The strength of an insert that has no gap, alone. Only that of the edge depends on the situation.
NominalForce strength_alone(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                            std::size_t insert, Trace& trace);

// The same in each of many situations, in their order.
std::vector<NominalForce> strengths_alone(Mode mode, const StageFacts& facts,
                                          const std::vector<InsertSituation>& situations, std::size_t insert);

// What the insert itself is asked for: its tension or its shear.
Force demand_alone(Mode mode, const InsertSituation& situation, std::size_t insert);

// The direction of the shear in piece axes; that of the nearest edge where there is no shear.
Direction shear_direction(const demands::InsertForce& force, const piece::InsertSite& site);

}  // namespace firstpick::checks
