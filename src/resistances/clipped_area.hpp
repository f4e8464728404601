// The area that squares cover together inside an outline with openings.
#pragma once

#include <array>
#include <vector>

#include "piece/body.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

struct Square {
  plan::PlanarPoint centre;     // in the axes of the outline
  double u_x = 1.0, u_y = 0.0;  // unit vector along one of its sides
  Length half_side;
};

// Each part of the plane counts once, however many squares lie over it. Exact but for rounding, also where
// sides of squares and edges of the outline lie on one line.
Area covered_area(const piece::Outline& outline, const std::vector<Square>& squares);

}  // namespace firstpick::resistances
