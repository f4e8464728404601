// Legs that are longer or shorter than drawn.
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

inline constexpr std::size_t most_uncertain_legs = 8;

// The piece hung once for every combination of legs that are longer and legs that are shorter by `tolerance` of
// their length; all longer and all shorter only move it up and down and are left out. The name of each says
// which legs are short.
// Not assessed: more than eight ropes; a tolerance that is not a number from 0 to 1; a combination that does not
// hang.
Outcome<std::vector<Sharing>> length_errors(const HungPiece& piece, Ratio tolerance);

}  // namespace firstpick::demands
