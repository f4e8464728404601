// The triangles of a meshed panel as elements, and which of them holds a given place.
#pragma once

#include <optional>
#include <vector>

#include "demands/plate_element.hpp"
#include "demands/plate_mesh.hpp"

namespace firstpick::demands {

class PlateGrid {
 public:
  PlateGrid(const PlateMesh& mesh, double rigidity, double poisson);

  struct Place {
    std::size_t triangle = 0;
    double share_2 = 0.0, share_3 = 0.0;  // area coordinates
  };
  std::optional<Place> find(const PlatePoint& p) const;  // nothing outside the panel
  int freedom(std::size_t triangle, std::size_t local) const;

  PlateMesh mesh;
  std::vector<PlateElement> elements;
  double rigidity = 1.0, poisson = 0.0;

 private:
  // What telling whether a triangle holds a place takes: its first corner, and the other two as seen from there.
  struct Reach {
    double x_m, y_m, to_2_x_m, to_2_y_m, to_3_x_m, to_3_y_m, doubled_m2;
  };
  std::array<PlatePoint, 3> corners(std::size_t triangle) const;

  double low_x_m_ = 1e300, low_y_m_ = 1e300, bin_m_ = 1.0;
  int columns_ = 1, rows_ = 1;
  std::vector<std::vector<std::size_t>> bins_;
  std::vector<Reach> reaches_;
};

}  // namespace firstpick::demands
