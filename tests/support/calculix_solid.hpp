// A solid of bricks given to CalculiX, an independent finite element program, where it is installed (`ccx`): bricks of twenty
// nodes on a grid, under their own weight, held up along upright lines.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <vector>

namespace firstpick::tests {

struct BrickGrid {
  std::vector<double> x, y, z;                                    // the planes of the grid, upwards
  std::function<bool(double x, double y, double z)> is_concrete;  // at the middle of a cell
  double weight = 0.0;                                            // per volume
  double poisson = 0.0;
  std::vector<std::array<double, 2>> held_up;                     // x, y of lines of nodes that cannot go down or up
};

// Stresses xx, yy, zz at these places, which are nodes. Nothing: it did not run, or wrote no result.
std::optional<std::vector<std::array<double, 3>>> calculix_bricks(const BrickGrid& grid,
                                                                  const std::vector<std::array<double, 3>>& places);

}  // namespace firstpick::tests
