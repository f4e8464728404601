// The same panel given to CalculiX, an independent finite element program, where it is installed (`ccx`): shells of six
// nodes on the triangles of our mesh, solved as bricks through the thickness.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "demands/plate_membrane.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::tests {

struct CalculixPlate {
  // At the places asked for; deflection down for a pressure down, moments from the stresses of the two faces.
  std::vector<double> deflection, M_x, M_y;
};

bool calculix_is_installed();

// Plate of this thickness, unit rigidity as in PlateProblem, w = 0 at the nodes `held`. Nothing: it did not run, or wrote
// no result.
std::optional<CalculixPlate> calculix_plate(const demands::PlateMesh& mesh, const std::vector<int>& held, double poisson,
                                            double thickness, const std::vector<demands::PlatePoint>& places);

struct CalculixMembrane {
  std::vector<demands::MembraneForces> forces;       // per width, at the places asked for
  std::vector<std::array<double, 2>> moved;          // of a modulus times thickness of one
};

// The same mesh pulled in its own plane by `body`, a force per area, and forces at nodes that balance it.
std::optional<CalculixMembrane> calculix_membrane(const demands::PlateMesh& mesh, const demands::PlatePoint& body,
                                                  const std::vector<demands::MembraneNodeForce>& forces, double poisson,
                                                  const std::vector<demands::PlatePoint>& places);

}  // namespace firstpick::tests
