#include "demands/set_down.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "demands/base_plane.hpp"
#include "demands/convex_hull.hpp"

namespace firstpick::demands {

namespace {

using plan::PlanarPoint;
using Outline = std::vector<PlanarPoint>;

constexpr double on_a_side_within = 1e-9;         // of a side
constexpr double nearly_parallel = 1e-3;  // sine of the angle between two bearers

Area cross_of(const PlanarPoint& a, const PlanarPoint& b) { return a.x * b.y - a.y * b.x; }
PlanarPoint operator-(const PlanarPoint& a, const PlanarPoint& b) { return {a.x - b.x, a.y - b.y}; }
PlanarPoint between(const PlanarPoint& a, const PlanarPoint& b, double t) {
  return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
}
Length length_of(const PlanarPoint& p) { return root(p.x * p.x + p.y * p.y); }

// Even-odd over all rings: inside an outline and in no opening.
bool stands_on(const std::vector<Outline>& rings, const PlanarPoint& p) {
  bool inside = false;
  for (const Outline& ring : rings)
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
      const PlanarPoint &a = ring[i], &b = ring[j];
      if ((a.y > p.y) == (b.y > p.y)) continue;
      if (p.x < a.x + ((p.y - a.y) / (b.y - a.y)).value() * (b.x - a.x)) inside = !inside;
    }
  return inside;
}

// The bearing face of a bearer, counter-clockwise or clockwise, on the ground.
Outline face_of(const BasePlane& base, const plan::Bearer& bearer) {
  const PlanarPoint a = base.foot((*bearer.along)[0]), b = base.foot((*bearer.along)[1]);
  const PlanarPoint along = b - a;
  const double half = (0.5 * bearer.width / length_of(along)).value();
  const PlanarPoint side{-half * along.y, half * along.x};
  return {a - side, b - side, {b.x + side.x, b.y + side.y}, {a.x + side.x, a.y + side.y}};
}

// Corner points of where a bearer meets the faces above it: enough for the hull of all of it.
Outline contact(const std::vector<Outline>& rings, const Outline& bearer) {
  Outline points;
  for (const PlanarPoint& corner : bearer)
    if (stands_on(rings, corner)) points.push_back(corner);
  for (const Outline& ring : rings)
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
      if (stands_on({bearer}, ring[i])) points.push_back(ring[i]);
      for (std::size_t k = 0, l = bearer.size() - 1; k < bearer.size(); l = k++) {
        const PlanarPoint r = ring[i] - ring[j], s = bearer[k] - bearer[l], d = bearer[l] - ring[j];
        const Area parallel = cross_of(r, s);
        if (parallel == Area{}) continue;
        const double t = (cross_of(d, s) / parallel).value(), w = (cross_of(d, r) / parallel).value();
        const auto on = [](double along) { return along >= -on_a_side_within && along <= 1.0 + on_a_side_within; };
        if (on(t) && on(w)) points.push_back(between(ring[j], ring[i], t));
      }
    }
  return points;
}

// From the sides of the hull to the foot, inwards; zero on anything that is no area.
Length margin_in(const Outline& hull, const PlanarPoint& foot) {
  Length least = Length::from_value(INFINITY);
  for (std::size_t i = 0, j = hull.size() - 1; i < hull.size(); j = i++) {
    const PlanarPoint side = hull[i] - hull[j];
    least = std::min(least, Length{cross_of(side, foot - hull[j]) / length_of(side)});
  }
  return least;
}

std::optional<std::array<double, 2>> shares_on(const BasePlane& base, const std::vector<plan::Bearer>& bearers,
                                               const PlanarPoint& foot) {
  if (bearers.size() != 2) return {};
  const PlanarPoint a = base.foot((*bearers[0].along)[0]), along = base.foot((*bearers[0].along)[1]) - a;
  const PlanarPoint c = base.foot((*bearers[1].along)[0]), other = base.foot((*bearers[1].along)[1]) - c;
  if (!(abs(cross_of(along, other)) <= nearly_parallel * length_of(along) * length_of(other))) return {};
  const PlanarPoint middle{c.x + 0.5 * other.x, c.y + 0.5 * other.y};
  const Area apart = cross_of(along, middle - a), to_foot = cross_of(along, foot - a);
  if (apart == Area{}) return {};
  const double second = (to_foot / apart).value();
  return std::array{1.0 - second, second};
}

}  // namespace

Outcome<Standing> set_down(const piece::Body& body, const std::vector<plan::Bearer>& bearers,
                           const Position& centre, const Direction& up) {
  const auto plane = base_plane(body, up);
  if (const auto* gap = std::get_if<NotAssessed>(&plane)) return *gap;
  const auto& base = std::get<BasePlane>(plane);

  Outline points;
  if (bearers.empty())
    for (const Outline& ring : base.rings) points.insert(points.end(), ring.begin(), ring.end());
  for (std::size_t i = 0; i < bearers.size(); ++i) {
    if (!bearers[i].along)
      return NotAssessed{fmt::format("the ends of bearer {} are not known", i + 1), "along = [ [x, y, z], [x, y, z] ]"};
    if (!(length_of(base.foot((*bearers[i].along)[1]) - base.foot((*bearers[i].along)[0])) > 1.0 * mm))
      return NotAssessed{fmt::format("bearer {} stands on its end as the piece is set down", i + 1),
                         "the ends of each bearer, level, in the axes of the piece"};
    const Outline here = contact(base.rings, face_of(base, bearers[i]));
    if (here.empty())
      return NotAssessed{fmt::format("bearer {} is not under the piece", i + 1),
                         "the place of each bearer in the axes of the piece"};
    points.insert(points.end(), here.begin(), here.end());
  }

  const Outline hull = convex_hull(std::move(points));
  const PlanarPoint foot = base.foot(centre);
  Standing standing;
  standing.height = dot(up, centre) - base.level;
  standing.margin = hull.size() < 3 ? Length{} : margin_in(hull, foot);
  if (!(standing.height > Length{}) || !is_finite(standing.margin))
    return NotAssessed{"the centre of gravity does not lie above what the piece stands on", "check the solids"};
  standing.tipping = std::atan2(in(m, standing.margin), in(m, standing.height)) * radian;
  standing.shares = shares_on(base, bearers, foot);
  return standing;
}

}  // namespace firstpick::demands
