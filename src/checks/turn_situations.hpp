// The situations of a turn stage: one for each angle that matters and each sharing between the legs.
#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Fills hanging, turning and the situations of a turn stage whose load and strength are known already. The angles are
// samples, the worst of each leg, hook and insert force (turn_sweep), and the worst of each way a headed insert fails.
// Not assessed in each of them: what keeps the turn from being computed.
void add_turn(StageFacts& facts);

}  // namespace firstpick::checks
