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
// The same without what lies behind an opening or a notch: of each square only the concrete that a straight line from its
// centre reaches. A breakout body does not pass through a slot. Where two openings stand behind each other what both hide is
// taken off twice.
Area reached_area(const piece::Outline& outline, const std::vector<Square>& squares);

// What of the outline one square covers, for drawings; a part of it in two pieces hangs together along the square's sides.
piece::Outline covered_part(const piece::Outline& outline, const Square& square);


// What a straight line from the square's centre reaches of it, as parts beside each other, for drawings. Openings are still
// in them.
std::vector<std::vector<plan::PlanarPoint>> reached_parts(const piece::Outline& outline, const Square& square);

}  // namespace firstpick::resistances
