// A solid of bricks given to CalculiX, an independent finite element program, where it is installed (`ccx`): bricks of twenty
// nodes on a grid, under their own weight and a pull, held up along upright lines or as it is said.
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
  std::function<bool(double x, double y, double z)> held_fast{};       // nodes that cannot move at all
  std::function<bool(double x, double y, double z)> no_way_along_y{};  // nodes that cannot go along y
  std::function<bool(double x, double y, double z)> pulled{};          // nodes that share the pull
  std::array<double, 3> pull{};
};

struct BrickStress {
  std::array<double, 3> place, stress;  // xx, yy, zz
};

// At every node. Nothing: it did not run, or wrote no result.
std::optional<std::vector<BrickStress>> calculix_brick_stresses(const BrickGrid& grid);

// Stresses xx, yy, zz at these places, which are nodes. Nothing: it did not run, or wrote no result.
std::optional<std::vector<std::array<double, 3>>> calculix_bricks(const BrickGrid& grid,
                                                                  const std::vector<std::array<double, 3>>& places);

}  // namespace firstpick::tests
