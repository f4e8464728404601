// Plates of unit load and rigidity for tests: deflections come in q a^4/D, moments in q a^2, with a = 1.
#pragma once

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/plate_solve.hpp"

namespace firstpick::tests {

using demands::PlateMesh;
using demands::PlatePoint;
using demands::PlateProblem;
using demands::PlateRing;
using demands::PlateShape;
using demands::PlateSolution;

inline PlateRing rectangle_ring(double low_x, double low_y, double high_x, double high_y) {
  return {{low_x, low_y}, {high_x, low_y}, {high_x, high_y}, {low_x, high_y}};
}

// Sides 1 along x and b along y, the middle at the origin.
inline PlateShape rectangle_shape(double b) { return {rectangle_ring(-0.5, -0.5 * b, 0.5, 0.5 * b), {}}; }

inline PlateMesh meshed(const PlateShape& shape, const std::vector<PlatePoint>& focus, double size) {
  const auto mesh = demands::plate_mesh(shape, focus, size);
  if (!mesh) FAIL("the plate could not be divided");
  return *mesh;
}

inline PlateSolution solved(const PlateMesh& mesh, const PlateProblem& problem) {
  const auto solution = demands::solve_plate(mesh, problem);
  if (!solution) FAIL("the plate could not be solved");
  return *solution;
}

// All four sides: w = 0 and no slope along the side.
inline void hold_simply(const PlateMesh& mesh, double b, PlateProblem& problem) {
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
    const int first = 3 * static_cast<int>(i);
    const bool on_x = std::abs(std::abs(mesh.nodes[i].x_m) - 0.5) < 1e-9;
    const bool on_y = std::abs(std::abs(mesh.nodes[i].y_m) - 0.5 * b) < 1e-9;
    if (on_x || on_y) problem.held.push_back(first);
    if (on_x) problem.held.push_back(first + 1);  // dw/dy
    if (on_y) problem.held.push_back(first + 2);  // -dw/dx
  }
}

// All four sides are lines of symmetry: no slope across them.
inline void hold_as_symmetric(const PlateMesh& mesh, double b, PlateProblem& problem) {
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
    const int first = 3 * static_cast<int>(i);
    if (std::abs(std::abs(mesh.nodes[i].x_m) - 0.5) < 1e-9) problem.held.push_back(first + 2);
    if (std::abs(std::abs(mesh.nodes[i].y_m) - 0.5 * b) < 1e-9) problem.held.push_back(first + 1);
  }
}

struct Bent {  // what a table row gives of a place
  double w, Mx, My;
};
// The deflection of a focus node; moments as the mean over a small disc.
inline Bent bent_at(const PlateSolution& plate, std::size_t focus, double radius = 0.01) {
  const int node = plate.mesh().focus_nodes.at(focus);
  const PlatePoint at = plate.mesh().nodes.at(static_cast<std::size_t>(node));
  const auto moments = plate.patch_moments(at, radius);
  if (!moments) FAIL("no moments there");
  return {plate.deflection(node), (*moments)[0], (*moments)[1]};
}

}  // namespace firstpick::tests
