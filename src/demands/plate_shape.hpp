// The outline of a flat panel for the plate kernel: plain numbers in metres, x and y in the plane of the panel.
#pragma once

#include <array>
#include <vector>

namespace firstpick::demands {

struct PlatePoint {
  double x_m = 0.0, y_m = 0.0;
};
using PlateRing = std::vector<PlatePoint>;  // not closed: the last point joins the first

struct PlateShape {
  PlateRing outer;
  std::vector<PlateRing> holes;
  std::vector<std::array<PlatePoint, 2>> seams{};  // inside it, lines that sides of triangles follow; no boundary
};

bool is_inside(const PlateRing& ring, const PlatePoint& p);
bool is_inside(const PlateShape& shape, const PlatePoint& p);
double area_m2(const PlateRing& ring);    // without its sign
double area_m2(const PlateShape& shape);
double distance_m(const PlatePoint& a, const PlatePoint& b);
double distance_m(const PlatePoint& p, const PlatePoint& a, const PlatePoint& b);  // from the side a b
double boundary_distance_m(const PlateShape& shape, const PlatePoint& p);

}  // namespace firstpick::demands
