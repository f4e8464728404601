// A prism needs an outline that bounds one area: no side crosses or touches another, and each hole lies
// inside the outline and outside the other holes.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr double touching_mm = 0.01;  // sides nearer than this touch
constexpr double farthest_mm = 1e5;   // as for the other shapes

struct Point {
  double x_mm, y_mm;
};
struct Side {
  Point a, b;
  std::size_t ring, number;  // side `number` of its ring, from 1, starts at that point
};

double turn(const Point& o, const Point& a, const Point& b) {
  return (a.x_mm - o.x_mm) * (b.y_mm - o.y_mm) - (a.y_mm - o.y_mm) * (b.x_mm - o.x_mm);
}

double distance_mm(const Point& p, const Side& side) {
  const double dx = side.b.x_mm - side.a.x_mm, dy = side.b.y_mm - side.a.y_mm;
  const double along = ((p.x_mm - side.a.x_mm) * dx + (p.y_mm - side.a.y_mm) * dy) / (dx * dx + dy * dy);
  const double t = std::clamp(along, 0.0, 1.0);
  return std::hypot(p.x_mm - side.a.x_mm - t * dx, p.y_mm - side.a.y_mm - t * dy);
}

bool cross(const Side& s, const Side& t) {
  return (turn(s.a, s.b, t.a) > 0.0) != (turn(s.a, s.b, t.b) > 0.0) &&
         (turn(t.a, t.b, s.a) > 0.0) != (turn(t.a, t.b, s.b) > 0.0);
}

bool meet(const Side& s, const Side& t) {
  return cross(s, t) || std::min({distance_mm(s.a, t), distance_mm(s.b, t), distance_mm(t.a, s),
                                  distance_mm(t.b, s)}) < touching_mm;
}

// Neighbours share a corner and may not fold back on each other.
bool fold_back(const Side& s, const Side& next) {
  return distance_mm(s.a, next) < touching_mm || distance_mm(next.b, s) < touching_mm;
}

bool inside(const Point& p, const std::vector<Side>& ring) {
  bool is_inside = false;
  for (const Side& side : ring) {
    if ((side.a.y_mm > p.y_mm) == (side.b.y_mm > p.y_mm)) continue;
    const double t = (p.y_mm - side.a.y_mm) / (side.b.y_mm - side.a.y_mm);
    if (p.x_mm < side.a.x_mm + t * (side.b.x_mm - side.a.x_mm)) is_inside = !is_inside;
  }
  return is_inside;
}

std::string ring_name(std::size_t ring) { return ring == 0 ? "the outline" : fmt::format("hole {}", ring); }

std::optional<ShapeFault> point_fault(const std::vector<plan::PlanarPoint>& points, std::size_t ring) {
  if (points.size() < 3)
    return ShapeFault{fmt::format("{} has {} points", ring_name(ring), points.size()), "three at least"};
  for (std::size_t i = 0; i < points.size(); ++i)
    if (!(std::abs(in(mm, points[i].x)) <= farthest_mm && std::abs(in(mm, points[i].y)) <= farthest_mm))
      return ShapeFault{fmt::format("point {} of {} is too far away", i + 1, ring_name(ring)),
                        "the piece lies within 100 m of the origin"};
  for (std::size_t i = 0; i < points.size(); ++i) {
    const plan::PlanarPoint &p = points[i], &next = points[(i + 1) % points.size()];
    if (!(std::hypot(in(mm, next.x - p.x), in(mm, next.y - p.y)) >= touching_mm))
      return ShapeFault{fmt::format("points {} and {} of {} are one point", i + 1,
                                    (i + 1) % points.size() + 1, ring_name(ring)),
                        "each corner is written once; the last point joins the first"};
  }
  return {};
}

std::vector<Side> sides_of(const std::vector<plan::PlanarPoint>& points, std::size_t ring) {
  std::vector<Side> sides;
  const auto at = [&](std::size_t i) { return Point{in(mm, points[i].x), in(mm, points[i].y)}; };
  for (std::size_t i = 0; i < points.size(); ++i)
    sides.push_back({at(i), at((i + 1) % points.size()), ring, i + 1});
  return sides;
}

}  // namespace

std::optional<ShapeFault> outline_fault(const plan::Solid& prism) {
  std::vector<std::vector<Side>> rings;
  const auto add = [&](const auto& points) {
    auto fault = point_fault(points, rings.size());
    if (!fault) rings.push_back(sides_of(points, rings.size()));
    return fault;
  };
  if (auto fault = add(prism.outline)) return fault;
  for (const auto& hole : prism.holes)
    if (auto fault = add(hole)) return fault;

  std::vector<Side> sides;
  for (const auto& ring : rings) sides.insert(sides.end(), ring.begin(), ring.end());
  for (std::size_t i = 0; i < sides.size(); ++i)
    for (std::size_t j = i + 1; j < sides.size(); ++j) {
      const Side &s = sides[i], &t = sides[j];
      const std::size_t count = rings[s.ring].size();
      const bool t_follows = s.ring == t.ring && t.number == s.number % count + 1;
      const bool s_follows = s.ring == t.ring && s.number == t.number % count + 1;
      const bool fault = t_follows ? fold_back(s, t) : s_follows ? fold_back(t, s) : meet(s, t);
      if (fault)
        return ShapeFault{fmt::format("side {} of {} meets side {} of {}", s.number, ring_name(s.ring),
                                      t.number, ring_name(t.ring)),
                          "side 1 runs from point 1 to point 2"};
    }
  for (std::size_t hole = 1; hole < rings.size(); ++hole) {
    if (!inside(rings[hole].front().a, rings[0]))
      return ShapeFault{fmt::format("hole {} lies outside the outline", hole), ""};
    for (std::size_t other = 1; other < rings.size(); ++other)
      if (other != hole && inside(rings[hole].front().a, rings[other]))
        return ShapeFault{fmt::format("hole {} lies inside hole {}", hole, other), ""};
  }
  return {};
}

}  // namespace firstpick::piece
