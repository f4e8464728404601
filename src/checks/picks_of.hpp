// The points from which a piece hangs in a stage: an equalised group counts as one, at its middle.
#pragma once

#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

std::vector<Position> picks_of(const StageFacts& facts);

}  // namespace firstpick::checks
