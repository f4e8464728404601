// What holds a panel besides its picks.
//
// Of a panel that stands on an edge the reaction is spread along the edge, linearly, so that its resultant lies where statics
// puts it.
//
//   p(s) = a + b s      integral of p = 1,  integral of p s = s_r,  over what of the line is edge of the panel
//
// Source   statics. The ground is taken as even and the edge as bedded all along: it cannot pull.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "demands/plate_mesh.hpp"
#include "plan/plan.hpp"

namespace firstpick::demands {

inline PlatePoint plate_point(const plan::PlanarPoint& p) { return {in(m, p.x), in(m, p.y)}; }

struct EdgeShare {
  int node = 0;       // of the mesh
  double share = 0.0; // of the reaction
};

// Nothing: the line is no part of the boundary, or the resultant lies so far out that one end of the edge would lift.
std::optional<std::vector<EdgeShare>> edge_shares(const PlateMesh& mesh, const PlateShape& shape,
                                                  const std::array<PlatePoint, 2>& line, const PlatePoint& resultant);

// Freedoms of three nodes that hold the panel where the forces already balance: they carry nothing. The two nodes that lie
// farthest apart of a few directions, and the one farthest from their line.
std::vector<int> holding_nodes(const PlateMesh& mesh);

}  // namespace firstpick::demands
