// A meshed panel under pressure and forces at nodes, held at single freedoms: deflections, moments, reactions.
//
// Plain numbers in one coherent system of units (newton and metre in the program). Freedoms 3 n, 3 n + 1, 3 n + 2 are
// w (down), dw/dy and -dw/dx of node n. The pressure goes in equal thirds to the corners of each triangle.
//
// Source   elements: plate_element.hpp; equations: sparse L D L^T (Eigen).
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "demands/plate_element.hpp"
#include "demands/plate_mesh.hpp"

namespace firstpick::demands {

using PlateMoments = std::array<double, 3>;  // M_x, M_y, M_xy; tension below positive

struct PlateNodeLoad {
  int freedom = 0;
  double value = 0.0;  // force down on w; moment on the slopes
};

struct PlateProblem {
  double rigidity = 1.0, poisson = 0.0, pressure = 0.0;
  std::vector<PlateNodeLoad> loads;
  std::vector<int> held;  // freedoms that are zero
};

struct PlateShare {  // of a force at a place, for one corner of the triangle that holds it
  int node = 0;
  double share = 0.0;
};

class PlateGrid;  // the mesh, its elements, and where they are
struct PlateMean;

class PlateSolution {
 public:
  double deflection(int node) const { return freedoms_.at(static_cast<std::size_t>(3 * node)); }
  double reaction(int freedom) const { return reactions_.at(static_cast<std::size_t>(freedom)); }  // up on w
  // Nothing outside the panel.
  std::optional<PlateMoments> moments(const PlatePoint& p) const;
  // Mean over a disc of this radius, of what of it lies in the panel.
  std::optional<PlateMoments> patch_moments(const PlatePoint& p, double radius_m) const;
  // Mean over a line of this length through p, along x or y, of what of it lies in the panel.
  std::optional<PlateMoments> strip_moments(const PlatePoint& p, bool along_x, double length_m) const;

  // Over places of this mesh found before; nothing if none lies in the panel.
  std::optional<PlateMoments> mean(const PlateMean& over) const;

  const PlateMesh& mesh() const;

 private:
  friend class PlateSolver;
  std::shared_ptr<const PlateGrid> grid_;
  std::vector<double> freedoms_, reactions_;
  std::vector<std::array<PlateMoments, 3>> corner_moments_;  // of each triangle
  using CornerCurvatures = std::array<PlateElement::Curvatures, 3>;
  void find_corner_moments(const std::vector<CornerCurvatures>& of_triangles);
};

// One stiffness for many loads.
class PlateSolver {
 public:
  // Pressure and loads of the problem are not looked at here.
  PlateSolver(const PlateMesh& mesh, const PlateProblem& problem);
  ~PlateSolver();
  PlateSolver(const PlateSolver&) = delete;
  PlateSolver& operator=(const PlateSolver&) = delete;

  // Nothing: the panel is not held, or the equations give no numbers.
  std::optional<PlateSolution> solve(double pressure, const std::vector<PlateNodeLoad>& loads) const;

  // By area coordinates: sum and moments of the force are kept. Nothing outside the panel.
  std::optional<std::array<PlateShare, 3>> shares(const PlatePoint& p) const;

  const PlateGrid& grid() const;

 private:
  struct Equations;
  std::shared_ptr<const PlateGrid> grid_;
  std::vector<PlateSolution::CornerCurvatures> corner_curvatures_;  // of each triangle, for every load
  std::unique_ptr<Equations> equations_;
};

std::optional<PlateSolution> solve_plate(const PlateMesh& mesh, const PlateProblem& problem);

}  // namespace firstpick::demands
