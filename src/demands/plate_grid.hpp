// The triangles of a meshed panel as elements, which of them holds a given place, and means over places.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "demands/plate_element.hpp"
#include "demands/plate_mesh.hpp"

namespace firstpick::demands {

// A mean over places of what is linear in each triangle: how much each corner of which triangles counts. It is found once
// and serves every load on the mesh.
struct PlateMean {
  struct Part {
    std::size_t triangle = 0;
    std::array<double, 3> of_corner{};
  };
  std::vector<Part> parts;  // none: no place lies in the panel

  using Three = std::array<double, 3>;
  std::optional<Three> of(const std::vector<std::array<Three, 3>>& corners_of_triangles) const;
};

class PlateGrid {
 public:
  PlateGrid(const PlateMesh& mesh, double rigidity, double poisson);

  struct Place {
    std::size_t triangle = 0;
    double share_2 = 0.0, share_3 = 0.0;  // area coordinates
  };
  std::optional<Place> find(const PlatePoint& p) const;  // nothing outside the panel
  int freedom(std::size_t triangle, std::size_t local) const;

  // Over a disc, and over a line through p along x or y: of what of it lies in the panel.
  PlateMean disc_mean(const PlatePoint& p, double radius_m) const;
  PlateMean line_mean(const PlatePoint& p, bool along_x, double length_m) const;

  PlateMesh mesh;
  std::vector<PlateElement> elements;
  double rigidity = 1.0, poisson = 0.0;

 private:
  // What telling whether a triangle holds a place takes: its first corner, and the other two as seen from there.
  struct Reach {
    double x_m, y_m, to_2_x_m, to_2_y_m, to_3_x_m, to_3_y_m, doubled_m2;
  };
  // A place in area coordinates of a triangle, each times its doubled area.
  struct Seen {
    double of_2_m2, of_3_m2, doubled_m2;
    bool lies_within(double margin) const;  // wider by this share, narrower where it is below zero
    double share_2() const { return of_2_m2 / doubled_m2; }
    double share_3() const { return of_3_m2 / doubled_m2; }
  };
  Seen seen(std::size_t triangle, const PlatePoint& p) const;
  std::optional<Place> find(const PlatePoint& p, std::size_t near) const;
  static std::vector<std::array<int, 3>> neighbours(const PlateMesh& mesh);
  std::array<PlatePoint, 3> corners(std::size_t triangle) const;
  PlateMean mean(const std::vector<PlatePoint>& places) const;

  double low_x_m_ = 1e300, low_y_m_ = 1e300, bin_m_ = 1.0;
  int columns_ = 1, rows_ = 1;
  std::vector<std::vector<std::size_t>> bins_;
  std::vector<Reach> reaches_;
  std::vector<std::array<int, 3>> beyond_;
};

}  // namespace firstpick::demands
