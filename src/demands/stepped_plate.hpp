// A meshed panel of several thicknesses, one in each triangle, its faces in steps: bending and forces along
// it together.
//
// Plain numbers in one coherent system of units, as in plate_solve.hpp. Straight normals all through: with
// e_0 the strains of a reference plane and kappa the curvatures, at depth z below that plane
//
//   strain = e_0 + z kappa,   stress = C strain
//
//   K = integral of t B_m^T C B_m + S (B_m^T C B_b + B_b^T C B_m) + J B_b^T C B_b
//   S = (z_2^2 - z_1^2)/2,   J = (z_2^3 - z_1^3)/3
//
// over the area, the layer of a triangle from z_1 to z_2, t between. B_m of six-cornered triangles
// (plate_six_corners.hpp), B_b of DKT (plate_element.hpp): displacements and slopes are quadratic, so that
// parts off the reference plane bend with it without being held. Stresses do not depend on the modulus. A rib
// works with its slab as the two are joined.
//
// Source   theory of thin plates with an offset middle; equations: sparse L D L^T (Eigen).
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "demands/plate_membrane.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::demands {

struct PlateLayer {  // heights below the reference plane
  double top_m = 0.0, bottom_m = 0.0;
};
using FaceStress = std::array<double, 3>;  // x, y, shear; tension positive

enum class PlateFace { top, bottom };

class SteppedSolution {
 public:
  std::optional<std::size_t> zone(const PlatePoint& p) const;
  // As the triangle has it that holds the place; nothing outside the panel.
  std::optional<FaceStress> stress(const PlatePoint& p, PlateFace face) const;
  // Mean over a disc, of what of it lies in that zone; nothing where that is less than a quarter of what lies
  // in the panel.
  std::optional<FaceStress> patch_stress(const PlatePoint& p, double radius_m, std::size_t zone,
                                         PlateFace face) const;
  // Mean over a line of this length through p, along x or y, of what of it lies in that zone.
  std::optional<FaceStress> strip_stress(const PlatePoint& p, bool along_x, double length_m, std::size_t zone,
                                         PlateFace face) const;
  double deflection(int node) const { return freedoms_.at(static_cast<std::size_t>(3 * node)); }
  double held() const { return held_; }  // the largest force of the holds: what is out of balance

 private:
  friend class SteppedSolver;
  struct Parts;
  std::shared_ptr<const Parts> parts_;
  std::vector<double> freedoms_;
  double held_ = 0.0;
};

class SteppedSolver {
 public:
  // `zone` of each triangle, the layer of each zone.
  SteppedSolver(const PlateMesh& mesh, double poisson, std::vector<std::size_t> zone,
                std::vector<PlateLayer> layers);
  ~SteppedSolver();
  SteppedSolver(const SteppedSolver&) = delete;
  SteppedSolver& operator=(const SteppedSolver&) = delete;

  // `pressure` of each zone, down. Moments about the reference plane. Nothing: the equations give no numbers.
  std::optional<SteppedSolution> solve(const std::vector<double>& pressure,
                                       const std::vector<PlateNodeLoad>& loads,
                                       const std::vector<MembraneNodeForce>& forces) const;

 private:
  struct Equations;
  std::shared_ptr<const SteppedSolution::Parts> parts_;
  std::unique_ptr<Equations> equations_;
};

}  // namespace firstpick::demands
