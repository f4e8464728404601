// The common centre of gravity of the piece and what is attached to it.
#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Not assessed: parts are attached and the load of the stage is not known. Without parts it is that of the concrete.
Outcome<Position> load_centre_of(const StageFacts& facts);

}  // namespace firstpick::checks
