// A hung piece with its beams given to CalculiX, an independent finite element program, where it is installed (`ccx`):
// legs as springs that only pull, with large displacements; piece and beams as nets of springs a million times as stiff as
// the legs. It starts a millimetre and a twentieth of a degree off our rest, which shifts every tension by much more than
// is compared, and has to find its own rest.
#pragma once

#include <optional>
#include <vector>

#include "demands/hanging.hpp"

namespace firstpick::tests {

// Tension of each leg. Nothing: it did not run, or wrote no result. Legs that stretch, no sheaves, no equalised legs.
std::optional<std::vector<Force>> calculix_tensions(const demands::HungPiece& piece, const demands::Hanging& rest);

}  // namespace firstpick::tests
