// The common centre of gravity of the piece and what is attached to it.
#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Not assessed: parts are attached and the load of the stage is not known. Without parts it is that of the concrete.
Outcome<Position> load_centre_of(const StageFacts& facts);

// That with all form parts first, then without those that may be off by now, in the order of StageFacts::without_parts.
Outcome<std::vector<Position>> load_centres_of(const StageFacts& facts);

}  // namespace firstpick::checks
