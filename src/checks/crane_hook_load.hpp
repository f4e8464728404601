// Everything that hangs on the crane in a stage: piece, attached parts, grip by the rule set, rigging, block.
#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Not assessed: the stage's load is not, or no rigging, no crane, no weight of rigging or block is stated.
Outcome<Force> crane_hook_load(const StageFacts& facts);

}  // namespace firstpick::checks
