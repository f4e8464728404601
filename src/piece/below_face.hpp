// Whether the concrete is whole below the flat face of an insert. Of this folder alone: it shows types of the kernel.
#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Ax2.hxx>

#include "piece/body.hpp"

namespace firstpick::piece {

struct Assembly;

// A round body under the face about the insert, in metres: from one radius at the face to another, less is nothing, at its end.
struct RoundBody {
  double at_face_m, at_end_m, deep_m;
};

// Share of what of the body lies under the face (`site.outline`) that is not concrete: a void beside the insert, or sides that
// draw in below the face. `axes`: of the site, their direction out of the concrete. 1 where the kernel gives up.
double share_not_concrete(const Assembly& assembly, const InsertSite& site, const gp_Ax2& axes,
                          const RoundBody& body);

}  // namespace firstpick::piece
