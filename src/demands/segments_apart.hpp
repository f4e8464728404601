// The least distance between two straight lines with ends.
//
//   least of |p + s u - (q + t v)|   over 0 <= s, t <= 1        a convex quadratic: s, then t, then s again, each clamped
//
// Source: geometry.
#pragma once

#include <array>

#include "units/vector.hpp"

namespace firstpick::demands {

Length segments_apart(const std::array<Position, 2>& one, const std::array<Position, 2>& other);

}  // namespace firstpick::demands
