// Lower and upper chain over the points in order of x, y.
#include "demands/convex_hull.hpp"

#include <algorithm>
#include <utility>

namespace firstpick::demands {

namespace {

constexpr double on_a_side = 1e-12;  // of the area of the box around the points

}  // namespace

std::vector<plan::PlanarPoint> convex_hull(std::vector<plan::PlanarPoint> points) {
  std::ranges::sort(points, {}, [](const plan::PlanarPoint& p) { return std::pair(p.x.value(), p.y.value()); });
  if (points.size() < 3) return points;
  double low_y_m = points[0].y.value(), high_y_m = low_y_m;
  for (const auto& p : points) {
    low_y_m = std::min(low_y_m, p.y.value());
    high_y_m = std::max(high_y_m, p.y.value());
  }
  const double size_m = std::max(points.back().x.value() - points.front().x.value(), high_y_m - low_y_m);
  const double least_m2 = on_a_side * size_m * size_m;
  const auto turns_left = [&](const plan::PlanarPoint& a, const plan::PlanarPoint& b, const plan::PlanarPoint& c) {
    return ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).value() > least_m2;
  };
  std::vector<plan::PlanarPoint> hull;
  const auto add = [&](const plan::PlanarPoint& p, std::size_t base) {
    while (hull.size() >= base + 2 && !turns_left(hull[hull.size() - 2], hull.back(), p)) hull.pop_back();
    hull.push_back(p);
  };
  for (const auto& p : points) add(p, 0);
  const std::size_t lower = hull.size() - 1;
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], lower);
  hull.pop_back();
  return hull;
}

}  // namespace firstpick::demands
