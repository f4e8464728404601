// The ropes of a rigging: legs that a sheave joins are one, every other leg is one of its own.
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

// Indices of the legs of each rope: the equalised groups first, then the others in order.
std::vector<std::vector<std::size_t>> ropes_of(const HungPiece& piece);

}  // namespace firstpick::demands
