// Distances from an insert to the edges of its face in four directions at right angles.
//
// ACI 318 draws rectangles; a face here may have cut corners, windows and curves. An edge counts in
// direction d where
//   - it faces that way: its normal out of the concrete is within 45 deg of d, and
//   - it lies that way: it is seen from the insert within 45 deg of d.
// c(d) is the distance to the nearest point of such an edge, and never more than the concrete met straight
// along d. For a rectangle along u, v these are its four edge distances. A straight edge beside the insert
// does not count in the direction along it, whatever its length.
//
// Inputs   outline and openings in the axes of the site, the insert at the origin.

#include "resistances/edge_distance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace firstpick::resistances {

namespace {

struct AlongUp_m {
  double x, y;
};

constexpr double none = std::numeric_limits<double>::infinity();
constexpr double within_45_deg = 0.70710678118654752 - 1e-9;  // an edge at exactly 45 deg counts both ways

double squared_distance_m2(AlongUp_m p, AlongUp_m q) {  // from the origin to the nearest point of the segment
  const double dx = q.x - p.x, dy = q.y - p.y, length2 = dx * dx + dy * dy;
  const double t = length2 > 0.0 ? std::clamp(-(p.x * dx + p.y * dy) / length2, 0.0, 1.0) : 0.0;
  const double x = p.x + t * dx, y = p.y + t * dy;
  return x * x + y * y;
}

// The part of the segment on the side where a x + b y >= 0; empty: false.
bool keep_side(AlongUp_m& p, AlongUp_m& q, double a, double b) {
  const double at_p = a * p.x + b * p.y, at_q = a * q.x + b * q.y;
  if (!(at_p >= 0.0 || at_q >= 0.0)) return false;
  if (at_p >= 0.0 && at_q >= 0.0) return true;
  const double t = at_p / (at_p - at_q);
  const AlongUp_m crossing{p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)};
  (at_p < 0.0 ? p : q) = crossing;
  return true;
}

// In axes turned so that the direction is +x: how far the segment is, squared, as an edge of that direction.
double squared_distance_ahead_m2(AlongUp_m p, AlongUp_m q, bool faces_that_way) {
  double found = none;
  if (p.y * q.y <= 0.0) {  // straight ahead
    const double x = p.y == q.y ? std::min(p.x, q.x) : p.x + (q.x - p.x) * (p.y / (p.y - q.y));
    if (x > 0.0) found = x * x;
  }
  if (faces_that_way && keep_side(p, q, 1.0, -1.0) && keep_side(p, q, 1.0, 1.0))
    found = std::min(found, squared_distance_m2(p, q));
  return found;
}

struct Nearest {  // squared distances
  std::array<double, 4> c_m2{none, none, none, none};
  double nearest_m2 = none;
  int turns_right = 0;  // crossings of the ray to the right of the origin, for inside and outside
  bool finite = true;

  // `ring` counter-clockwise around concrete, clockwise around an opening: the normal out of the concrete
  // is (dy, -dx).
  void take(const std::vector<plan::PlanarPoint>& ring, const std::array<double, 4>& turn) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const auto& from = ring[i];
      const auto& to = ring[i + 1 == ring.size() ? 0 : i + 1];
      const AlongUp_m p{in(m, from.x), in(m, from.y)}, q{in(m, to.x), in(m, to.y)};
      finite = finite && std::isfinite(p.x) && std::isfinite(p.y);
      const double dx = q.x - p.x, dy = q.y - p.y, long_enough = within_45_deg * std::sqrt(dx * dx + dy * dy);
      if (long_enough == 0.0) continue;
      nearest_m2 = std::min(nearest_m2, squared_distance_m2(p, q));
      if ((p.y > 0.0) != (q.y > 0.0) && p.x + dx * (p.y / (p.y - q.y)) > 0.0)
        turns_right += p.y > 0.0 ? -1 : 1;

      const auto& [u_x, u_y, v_x, v_y] = turn;
      const AlongUp_m pt{p.x * u_x + p.y * u_y, p.x * v_x + p.y * v_y};
      const AlongUp_m qt{q.x * u_x + q.y * u_y, q.x * v_x + q.y * v_y};
      const double n_u = dy * u_x - dx * u_y, n_v = dy * v_x - dx * v_y;  // times the length of the segment
      c_m2[0] = std::min(c_m2[0], squared_distance_ahead_m2(pt, qt, n_u >= long_enough));
      c_m2[1] =
          std::min(c_m2[1], squared_distance_ahead_m2({-pt.x, -pt.y}, {-qt.x, -qt.y}, -n_u >= long_enough));
      c_m2[2] =
          std::min(c_m2[2], squared_distance_ahead_m2({pt.y, -pt.x}, {qt.y, -qt.x}, n_v >= long_enough));
      c_m2[3] =
          std::min(c_m2[3], squared_distance_ahead_m2({-pt.y, pt.x}, {-qt.y, qt.x}, -n_v >= long_enough));
    }
  }
};

}  // namespace

Outcome<EdgeDistances> edge_distances(const piece::InsertSite& site, const Direction& u, const Direction& v) {
  const std::array<double, 4> turn{dot(site.u, u), dot(site.v, u), dot(site.u, v), dot(site.v, v)};
  Nearest found;
  found.take(site.outline.outer, turn);
  for (const auto& hole : site.outline.holes) found.take(hole, turn);

  if (!found.finite || found.turns_right != 1 || !(found.nearest_m2 > 0.0))
    return NotAssessed{fmt::format("insert {} does not lie inside the outline of its face", site.insert), {}};
  EdgeDistances distances{{}, std::sqrt(found.nearest_m2) * m};
  for (std::size_t i = 0; i < 4; ++i) {
    if (!std::isfinite(found.c_m2[i]))
      return NotAssessed{
          fmt::format("no edge of the face of insert {} is found in every direction", site.insert), {}};
    distances.c[i] = std::sqrt(found.c_m2[i]) * m;
  }
  return distances;
}

Outcome<EdgeDistances> edge_distances(const HeadedInsert& insert, const Direction& towards) {
  const piece::InsertSite& site = *insert.site;
  const auto& c = insert.edges.c;
  constexpr double along = 1.0 - 1e-12;
  const double on_u = dot(towards, site.u), on_v = dot(towards, site.v);
  if (on_u > along) return insert.edges;
  if (on_u < -along) return EdgeDistances{{c[1], c[0], c[3], c[2]}, insert.edges.nearest};
  if (on_v > along) return EdgeDistances{{c[2], c[3], c[1], c[0]}, insert.edges.nearest};
  if (on_v < -along) return EdgeDistances{{c[3], c[2], c[0], c[1]}, insert.edges.nearest};
  return edge_distances(site, towards, cross(site.normal, towards));
}

}  // namespace firstpick::resistances
