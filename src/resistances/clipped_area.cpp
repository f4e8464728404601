// Area of a union of squares inside an outline with openings.
//
// The squares are cut into convex parts that do not overlap: of each square what the earlier ones leave.
// The outline is clipped by each part, half plane by half plane, and the signed areas are added: openings
// run clockwise, so theirs are taken away. Clipping by half planes has no special cases: a corner on a
// line, or two edges on one line, change the area by no more than rounding. (A general union of polygons
// has to decide such cases, and they are the usual ones here: inserts in rows, squares that end at the
// edge.)

#include "resistances/clipped_area.hpp"

#include <cstddef>
#include <utility>

namespace firstpick::resistances {

namespace {

struct Point_m {
  double x, y;
};
using Ring = std::vector<Point_m>;

struct HalfPlane {  // a x + b y <= c
  double a, b, c;
  HalfPlane other_side() const { return {-a, -b, -c}; }
};
using Sides = std::array<HalfPlane, 4>;

Ring clipped(const Ring& ring, const HalfPlane& side) {
  Ring kept;
  kept.reserve(ring.size() + 4);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point_m &p = ring[i], &q = ring[i + 1 == ring.size() ? 0 : i + 1];
    const double beyond_p = side.a * p.x + side.b * p.y - side.c;
    const double beyond_q = side.a * q.x + side.b * q.y - side.c;
    if (beyond_p <= 0.0) kept.push_back(p);
    if ((beyond_p < 0.0 && beyond_q > 0.0) || (beyond_p > 0.0 && beyond_q < 0.0)) {
      const double t = beyond_p / (beyond_p - beyond_q);
      kept.push_back({p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)});
    }
  }
  return kept;
}

double signed_area_m2(const Ring& ring) {
  double twice = 0.0;
  for (std::size_t i = 0; i + 2 < ring.size();
       ++i) {  // fan from the first point: small differences, small rounding
    const Point_m &o = ring[0], &p = ring[i + 1], &q = ring[i + 2];
    twice += (p.x - o.x) * (q.y - o.y) - (q.x - o.x) * (p.y - o.y);
  }
  return 0.5 * twice;
}

Ring corners_of(const Square& square) {
  const double x = in(m, square.centre.x), y = in(m, square.centre.y), r = in(m, square.half_side);
  const double ux = r * square.u_x, uy = r * square.u_y;
  return {{x - ux + uy, y - uy - ux},
          {x + ux + uy, y + uy - ux},
          {x + ux - uy, y + uy + ux},
          {x - ux - uy, y - uy + ux}};
}

Sides sides_of(const Square& square) {
  const double x = in(m, square.centre.x), y = in(m, square.centre.y), r = in(m, square.half_side);
  const auto side = [&](double a, double b) { return HalfPlane{a, b, a * x + b * y + r}; };
  return {side(square.u_x, square.u_y), side(-square.u_x, -square.u_y), side(-square.u_y, square.u_x),
          side(square.u_y, -square.u_x)};
}

// What `sides` leaves of the convex ring, in convex parts: beyond its first side, beyond its second of the
// rest, ...
void append_outside(std::vector<Ring>& parts, Ring ring, const Sides& sides) {
  for (const HalfPlane& side : sides) {
    if (ring.size() < 3) return;
    Ring beyond = clipped(ring, side.other_side());
    if (beyond.size() > 2) parts.push_back(std::move(beyond));
    ring = clipped(ring, side);
  }
}

Ring inside(const std::vector<plan::PlanarPoint>& outline, const Ring& convex) {
  Ring ring;
  ring.reserve(outline.size() + 8);
  for (const auto& point : outline) ring.push_back({in(m, point.x), in(m, point.y)});
  for (std::size_t i = 0; i < convex.size() && ring.size() > 2; ++i) {
    const Point_m &p = convex[i], &q = convex[i + 1 == convex.size() ? 0 : i + 1];
    const double a = q.y - p.y, b = p.x - q.x;  // counter-clockwise: inside is to the left of p -> q
    if (a == 0.0 && b == 0.0) continue;
    ring = clipped(ring, {a, b, a * p.x + b * p.y});
  }
  return ring;
}

std::vector<plan::PlanarPoint> with_units(const Ring& ring) {
  std::vector<plan::PlanarPoint> points;
  for (const Point_m& p : ring) points.push_back({p.x * m, p.y * m});
  return points;
}

}  // namespace

Area covered_area(const piece::Outline& outline, const std::vector<Square>& squares) {
  double covered_m2 = 0.0;
  for (std::size_t i = 0; i < squares.size(); ++i) {
    std::vector<Ring> parts{corners_of(squares[i])};
    for (std::size_t j = 0; j < i; ++j) {
      std::vector<Ring> left;
      for (Ring& part : parts) append_outside(left, std::move(part), sides_of(squares[j]));
      parts = std::move(left);
    }
    for (const Ring& part : parts) {
      covered_m2 += signed_area_m2(inside(outline.outer, part));
      for (const auto& hole : outline.holes) covered_m2 += signed_area_m2(inside(hole, part));
    }
  }
  return covered_m2 * m2;
}

piece::Outline covered_part(const piece::Outline& outline, const Square& square) {
  const Ring corners = corners_of(square);
  piece::Outline part{with_units(inside(outline.outer, corners)), {}};
  for (const auto& hole : outline.holes)
    if (Ring open = inside(hole, corners); open.size() > 2) part.holes.push_back(with_units(open));
  return part;
}

}  // namespace firstpick::resistances
