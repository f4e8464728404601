// What a hanging piece shows to the wind.
//
//   A = min(A_faces, A_hull)
//   A_faces   the most, over all level directions d, of  sum over faces of A_i |n_i . d| / 2
//   A_hull    height of the piece times the largest level distance between two of its points
//
// Each is at least the shadow of the piece in any level direction: a ray that meets the piece enters and leaves it once or
// more, and each time crosses a face that the sum counts. A_faces is exact for any piece without hollows that face the
// wind (1 % more where faces are curved); a hollow is counted with its inner walls too, as far as A_hull does not end
// that. An opening that the wind blows through is not counted where it looks straight into the wind.
#pragma once

#include "piece/body.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::piece {

struct SideArea {
  Area area{};
  Position centre;  // of the faces that show it, each by what it shows; only its height counts
};

// `up`: the vertical in piece axes. Not assessed: a curved face of a body that the geometry kernel does not hold.
Outcome<SideArea> side_area(const Body& body, const Direction& up);

}  // namespace firstpick::piece
