// Everything that hangs on a crane in a stage: piece, attached parts, grip by the rule set, beams and sheaves,
// rigging, block.
#pragma once

#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// The cranes or hoists of the stage: those of the rigging's hooks, or the one that the stage names. A crane that
// the plan does not describe has no entry.
std::vector<const plan::Crane*> cranes_of(const StageFacts& facts);

// Not assessed: the stage's load is not, or no rigging, no crane, no weight of rigging or block is stated.
Outcome<Force> crane_hook_load(const StageFacts& facts, const plan::Crane* crane);

// Of all cranes together.
Outcome<Force> crane_hook_load(const StageFacts& facts);

}  // namespace firstpick::checks
