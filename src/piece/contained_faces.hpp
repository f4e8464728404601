// Flat faces that lie inside the concrete under a curved one. Of this folder alone: it shows types of the kernel.
#pragma once

#include <vector>

#include <TopoDS_Shape.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>

#include "piece/body.hpp"

namespace firstpick::piece {

// An insert in a curved face, in metres.
struct RoundSeat {
  gp_Pnt foot;                      // on the face
  gp_Dir normal;                    // out of the concrete there
  double embedment_m, thickness_m;  // thickness of the concrete behind it, along -normal
  std::vector<gp_Pnt> others;       // where the other inserts of the plan stand
};

// Each is the top of a body that lies wholly in the concrete, nearer to this insert than to any other, and holds its head:
// a right prism under `outline`, `thickness` deep, whose top is `sunk` below the insert. All have the same u, v. Empty: none
// was found. Throws Standard_Failure.
std::vector<InsertSite> contained_faces(const TopoDS_Shape& solid, const RoundSeat& seat);

}  // namespace firstpick::piece
