// A meshed panel with six-cornered triangles for displacements along it: corners, and the middles of the
// sides.
//
//   strain = B u,   u quadratic;   stress = C strain,   C = 1/(1 - nu^2) [1 nu 0; nu 1 0; 0 0 (1 - nu)/2]
//
// Source   the linear strain triangle: Zienkiewicz and Taylor, "The Finite Element Method" (from memory).
#pragma once

#include <array>
#include <vector>

#include "demands/plate_grid.hpp"

namespace firstpick::demands {

using SixStrains = std::array<std::array<double, 12>, 3>;  // strain x, y, shear, of each freedom
using PlaneLaw = std::array<std::array<double, 3>, 3>;      // of plane stress, for a modulus of one

struct SixCorneredMesh {
  SixCorneredMesh(const PlateMesh& of, double poisson);

  PlateGrid grid;
  std::vector<std::array<int, 6>> triangles;  // corners, then the middles of the sides 12, 23, 31
  int nodes = 0;
  PlaneLaw law{};

  SixStrains strains(std::size_t triangle, double share_2, double share_3) const;
  int freedom(std::size_t triangle, std::size_t local) const {
    return 2 * triangles[triangle][local / 2] + static_cast<int>(local % 2);
  }
  // Three freedoms that hold the panel in its plane: two far corners, the first both ways, the second across
  // the line between them, taken as the axis nearest to it.
  std::array<int, 3> holds() const;
};

}  // namespace firstpick::demands
