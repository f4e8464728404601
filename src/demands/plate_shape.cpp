#include "demands/plate_shape.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace firstpick::demands {

namespace {

// Panels measure metres: no square overflows, and std::hypot takes a fifth of the whole time of a panel.
double length_m(double x_m, double y_m) { return std::sqrt(x_m * x_m + y_m * y_m); }

}  // namespace

bool is_inside(const PlateRing& ring, const PlatePoint& p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const PlatePoint &a = ring[i], &b = ring[j];
    if ((a.y_m > p.y_m) != (b.y_m > p.y_m) &&
        p.x_m < (b.x_m - a.x_m) * (p.y_m - a.y_m) / (b.y_m - a.y_m) + a.x_m)
      inside = !inside;
  }
  return inside;
}

bool is_inside(const PlateShape& shape, const PlatePoint& p) {
  return is_inside(shape.outer, p) &&
         std::ranges::none_of(shape.holes, [&](const PlateRing& hole) { return is_inside(hole, p); });
}

double area_m2(const PlateRing& ring) {
  double doubled = 0.0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    doubled += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return 0.5 * std::abs(doubled);
}

double area_m2(const PlateShape& shape) {
  double area = area_m2(shape.outer);
  for (const PlateRing& hole : shape.holes) area -= area_m2(hole);
  return area;
}

double distance_m(const PlatePoint& a, const PlatePoint& b) { return length_m(a.x_m - b.x_m, a.y_m - b.y_m); }

double distance_m(const PlatePoint& p, const PlatePoint& a, const PlatePoint& b) {
  const double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, square = dx * dx + dy * dy;
  const double along = square > 0.0 ? ((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / square : 0.0;
  const double t = std::clamp(along, 0.0, 1.0);
  return length_m(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy);
}

double boundary_distance_m(const PlateShape& shape, const PlatePoint& p) {
  double least = std::numeric_limits<double>::infinity();
  const auto look = [&](const PlateRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i)
      least = std::min(least, distance_m(p, ring[i], ring[(i + 1) % ring.size()]));
  };
  look(shape.outer);
  for (const PlateRing& hole : shape.holes) look(hole);
  return least;
}

}  // namespace firstpick::demands
