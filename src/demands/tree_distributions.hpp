// What equilibrium allows in a rigging tree; called by basic_distributions().
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

// Not assessed: more than 20,000 ways; none that carries the load.
Outcome<std::vector<Sharing>> tree_distributions(const HungPiece& piece, const Hanging& hanging);

}  // namespace firstpick::demands
