// Distances from an insert to the edges of its face in four directions at right angles.
//
// ACI 318 draws rectangles; a face here may have cut corners, windows and curves. An edge counts in direction d where
//   - it faces that way: its normal out of the concrete is within 45 deg of d, and
//   - it lies that way: it is seen from the insert within 45 deg of d.
// c(d) is the distance to the nearest point of such an edge, and never more than the concrete met straight along d.
// For a rectangle along u, v these are its four edge distances. A straight edge beside the insert does not count in the
// direction along it, whatever its length.
//
// Inputs   outline and openings in the axes of the site, the insert at the origin.

#include "resistances/edge_distance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace firstpick::resistances {

namespace {

struct Point_m {
  double x, y;
};

constexpr double none = std::numeric_limits<double>::infinity();
constexpr double within_45_deg = 0.70710678118654752 - 1e-9;  // an edge at exactly 45 deg counts both ways

double distance_m(Point_m p, Point_m q) {  // from the origin to the nearest point of the segment
  const double dx = q.x - p.x, dy = q.y - p.y, length2 = dx * dx + dy * dy;
  const double t = length2 > 0.0 ? std::clamp(-(p.x * dx + p.y * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(p.x + t * dx, p.y + t * dy);
}

// The part of the segment on the side where a x + b y >= 0; empty: false.
bool keep_side(Point_m& p, Point_m& q, double a, double b) {
  const double at_p = a * p.x + b * p.y, at_q = a * q.x + b * q.y;
  if (!(at_p >= 0.0 || at_q >= 0.0)) return false;
  if (at_p >= 0.0 && at_q >= 0.0) return true;
  const double t = at_p / (at_p - at_q);
  const Point_m crossing{p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)};
  (at_p < 0.0 ? p : q) = crossing;
  return true;
}

// In axes turned so that the direction is +x: how far the segment is, as an edge of that direction.
double distance_ahead_m(Point_m p, Point_m q, double normal_x) {
  double found = none;
  if (p.y * q.y <= 0.0) {  // straight ahead
    const double x = p.y == q.y ? std::min(p.x, q.x) : p.x + (q.x - p.x) * (p.y / (p.y - q.y));
    if (x > 0.0) found = x;
  }
  if (normal_x >= within_45_deg && keep_side(p, q, 1.0, -1.0) && keep_side(p, q, 1.0, 1.0))
    found = std::min(found, distance_m(p, q));
  return found;
}

struct Nearest_m {
  std::array<double, 4> c{none, none, none, none};
  double nearest = none;
  int turns_right = 0;  // crossings of the ray to the right of the origin, for inside and outside
  bool finite = true;

  // `ring` counter-clockwise around concrete, clockwise around an opening: the normal out of the concrete is (dy, -dx).
  void take(const std::vector<plan::PlanarPoint>& ring, const std::array<double, 4>& turn) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const auto& from = ring[i];
      const auto& to = ring[i + 1 == ring.size() ? 0 : i + 1];
      const Point_m p{in(m, from.x), in(m, from.y)}, q{in(m, to.x), in(m, to.y)};
      finite = finite && std::isfinite(p.x) && std::isfinite(p.y);
      const double dx = q.x - p.x, dy = q.y - p.y, length = std::hypot(dx, dy);
      if (length == 0.0) continue;
      nearest = std::min(nearest, distance_m(p, q));
      if ((p.y > 0.0) != (q.y > 0.0) && p.x + dx * (p.y / (p.y - q.y)) > 0.0) turns_right += p.y > 0.0 ? -1 : 1;

      const auto& [u_x, u_y, v_x, v_y] = turn;
      const Point_m pt{p.x * u_x + p.y * u_y, p.x * v_x + p.y * v_y};
      const Point_m qt{q.x * u_x + q.y * u_y, q.x * v_x + q.y * v_y};
      const double n_u = (dy * u_x - dx * u_y) / length, n_v = (dy * v_x - dx * v_y) / length;
      c[0] = std::min(c[0], distance_ahead_m(pt, qt, n_u));
      c[1] = std::min(c[1], distance_ahead_m({-pt.x, -pt.y}, {-qt.x, -qt.y}, -n_u));
      c[2] = std::min(c[2], distance_ahead_m({pt.y, -pt.x}, {qt.y, -qt.x}, n_v));
      c[3] = std::min(c[3], distance_ahead_m({-pt.y, pt.x}, {-qt.y, qt.x}, -n_v));
    }
  }
};

}  // namespace

Outcome<EdgeDistances> edge_distances(const piece::InsertSite& site, const Direction& u, const Direction& v) {
  const std::array<double, 4> turn{dot(site.u, u), dot(site.v, u), dot(site.u, v), dot(site.v, v)};
  Nearest_m found;
  found.take(site.outline.outer, turn);
  for (const auto& hole : site.outline.holes) found.take(hole, turn);

  if (!found.finite || found.turns_right != 1 || !(found.nearest > 0.0))
    return NotAssessed{fmt::format("insert {} does not lie inside the outline of its face", site.insert), {}};
  EdgeDistances distances{{}, found.nearest * m};
  for (std::size_t i = 0; i < 4; ++i) {
    if (!std::isfinite(found.c[i]))
      return NotAssessed{fmt::format("no edge of the face of insert {} is found in every direction", site.insert), {}};
    distances.c[i] = found.c[i] * m;
  }
  return distances;
}

}  // namespace firstpick::resistances
