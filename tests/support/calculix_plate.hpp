// The same panel given to CalculiX, an independent finite element program, where it is installed (`ccx`): shells of six
// nodes on the triangles of our mesh, solved as bricks through the thickness.
#pragma once

#include <optional>
#include <utility>
#include <vector>

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
  std::vector<double> x, y;        // displacements of a modulus times thickness of one
  std::vector<double> n_x, n_y;    // per width
};

// The same panel pulled in its plane by `body_y` per area and by forces along y at nodes, which balance it; the first of
// these nodes held both ways, the second along y: plane stress of six-cornered triangles.
std::optional<CalculixMembrane> calculix_membrane(const demands::PlateMesh& mesh, double poisson, double body_y,
                                                  const std::vector<std::pair<int, double>>& forces,
                                                  const std::vector<demands::PlatePoint>& places);

}  // namespace firstpick::tests
