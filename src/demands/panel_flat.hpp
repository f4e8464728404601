// A panel in newton and metre: its outline, the places of its forces, where its moments or stresses are read.
#pragma once

#include <algorithm>
#include <vector>

#include "demands/plate_shape.hpp"
#include "plan/plan.hpp"

namespace firstpick::demands {

struct FlatPanel {
  PlateShape shape;
  std::vector<PlatePoint> focus;
  double low_x_m = 1e300, low_y_m = 1e300, high_x_m = -1e300, high_y_m = -1e300;
  std::vector<PlatePoint> reading;  // where moments are read away from picks: the same points on every mesh

  std::size_t focus_of(const PlatePoint& p) const {  // each place of a force is a focus point
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < focus.size(); ++i)
      if (distance_m(p, focus[i]) < distance_m(p, focus[nearest])) nearest = i;
    return nearest;
  }
  double size_m() const { return std::min(high_x_m - low_x_m, high_y_m - low_y_m); }
  double length_m() const { return std::max(high_x_m - low_x_m, high_y_m - low_y_m); }
};

// What is left to come where each further mesh changes the result by `finer` of the change before: a geometric series.
constexpr double left_after(double changed, double finer) { return changed * finer / (1.0 - finer); }

PlateShape plate_shape(const std::vector<plan::PlanarPoint>& outer,
                       const std::vector<std::vector<plan::PlanarPoint>>& holes);
bool is_on_panel(const PlateShape& shape, const PlatePoint& p);  // or on its boundary

// `places`: of its forces. Read over a grid as fine as the patches, and along its boundary as finely.
FlatPanel flat_panel(const std::vector<plan::PlanarPoint>& outer,
                     const std::vector<std::vector<plan::PlanarPoint>>& holes,
                     const std::vector<plan::PlanarPoint>& places, double patch_radius_m);

}  // namespace firstpick::demands
