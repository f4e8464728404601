// The points from which a piece hangs in a stage: inserts on one rope over a sheave count as one, in their middle, with
// everything below that sheave.
#pragma once

#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

std::vector<Position> picks_of(const StageFacts& facts);

}  // namespace firstpick::checks
