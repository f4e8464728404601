// The situations of a lift: each load set of the stage, in every way it may come to the legs.
#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Fills how the piece hangs and the situations of a stage whose load is known already and in which nothing is
// turned. Not assessed in each of them: what keeps the statics from being computed.
void add_lift(StageFacts& facts);

}  // namespace firstpick::checks
