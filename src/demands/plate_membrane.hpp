// A meshed panel pulled in its own plane: forces per width, for a load that balances by itself.
//
// Plain numbers in one coherent system of units, as in plate_solve.hpp. Six-cornered triangles of plane stress on the
// triangles of the mesh, displacements quadratic; a force does not depend on thickness or modulus.
//
//   K = integral of B^T C B,   C = 1/(1 - nu^2) [1 nu 0; nu 1 0; 0 0 (1 - nu)/2]      three points, exact for it
//
// Source   the linear strain triangle: Zienkiewicz and Taylor, "The Finite Element Method" (from memory); equations:
//          sparse L D L^T (Eigen). Beside CalculiX in tests/verification/membrane_test.cpp.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "demands/plate_mesh.hpp"

namespace firstpick::demands {

using MembraneForces = std::array<double, 3>;  // n_x, n_y, n_xy per width; tension positive

struct MembraneNodeForce {
  int node = 0;  // of the mesh
  double x = 0.0, y = 0.0;
};

class PlateGrid;
struct PlateMean;

class MembraneSolution {
 public:
  // Over places of this mesh found before; nothing if none lies in the panel.
  std::optional<MembraneForces> mean(const PlateMean& over) const;
  // Mean over a disc of this radius, of what of it lies in the panel.
  std::optional<MembraneForces> patch_forces(const PlatePoint& p, double radius) const;
  std::array<double, 2> displacement(int node) const;  // of a modulus times thickness of one
  double held() const { return held_; }                // the largest force of the three holds: what is out of balance

 private:
  friend class MembraneSolver;
  struct Mesh;
  std::shared_ptr<const Mesh> mesh_;
  std::vector<double> freedoms_;
  std::vector<std::array<MembraneForces, 3>> corner_forces_;  // of each triangle
  double held_ = 0.0;
  void find_corner_forces();
};

class MembraneSolver {
 public:
  MembraneSolver(const PlateMesh& mesh, double poisson);
  ~MembraneSolver();
  MembraneSolver(const MembraneSolver&) = delete;
  MembraneSolver& operator=(const MembraneSolver&) = delete;

  // `body_x`, `body_y`: force per area everywhere. Nothing: the equations give no numbers.
  std::optional<MembraneSolution> solve(double body_x, double body_y,
                                        const std::vector<MembraneNodeForce>& forces) const;

  const PlateGrid& grid() const;

 private:
  struct Equations;
  std::shared_ptr<const MembraneSolution::Mesh> mesh_;
  std::unique_ptr<Equations> equations_;
};

}  // namespace firstpick::demands
