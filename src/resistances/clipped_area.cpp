// Area of a union of squares inside an outline with openings.
//
// The squares are cut into convex parts that do not overlap: of each square what the earlier ones leave.
// The outline is clipped by each part, half plane by half plane, and the signed areas are added: openings
// run clockwise, so theirs are taken away. Clipping by half planes has no special cases: a corner on a
// line, or two edges on one line, change the area by no more than rounding. (A general union of polygons
// has to decide such cases, and they are the usual ones here: inserts in rows, squares that end at the
// edge.)

#include "resistances/clipped_area.hpp"

#include <algorithm>
#include <cmath>
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
template <class AllSides>
void append_outside(std::vector<Ring>& parts, Ring ring, const AllSides& sides) {
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

double hypot_m(const plan::PlanarPoint& a, const plan::PlanarPoint& b) {
  return std::hypot(in(m, a.x) - in(m, b.x), in(m, a.y) - in(m, b.y));
}

bool has_inward_corner(const std::vector<plan::PlanarPoint>& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const auto &a = outline[i], &b = outline[(i + 1) % outline.size()], &c = outline[(i + 2) % outline.size()];
    const auto turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    if (turn < -1e-9 * (hypot_m(b, a) * hypot_m(c, b)) * m2) return true;
  }
  return false;
}

// What of the convex ring lies behind the edge p q, seen from c in the concrete, which is to the left of the edge. From its
// other side an edge hides nothing that another has not hidden before.
Ring behind(const Ring& ring, const Point_m& c, const Point_m& p, const Point_m& q) {
  if (!((p.x - c.x) * (q.y - c.y) - (p.y - c.y) * (q.x - c.x) > 0.0)) return {};
  const auto ray = [&](const Point_m& to, double sign) {
    const double a = sign * (to.y - c.y), b = -sign * (to.x - c.x);
    return HalfPlane{a, b, a * c.x + b * c.y};
  };
  Ring left = clipped(ring, ray(p, 1.0));
  if (left.size() > 2) left = clipped(left, ray(q, -1.0));
  const double a = p.y - q.y, b = q.x - p.x;
  if (left.size() > 2) left = clipped(left, {a, b, a * p.x + b * p.y});
  return left;
}

// Area of concrete in the convex ring, and what of it a straight line from c does not reach for an opening or a notch. Where
// two stand behind each other it is counted twice: never too little.
double concrete_m2(const piece::Outline& outline, const Ring& ring) {
  double area = signed_area_m2(inside(outline.outer, ring));
  for (const auto& hole : outline.holes) area += signed_area_m2(inside(hole, ring));
  return area;
}
// What each edge hides of the convex ring: convex too.
std::vector<Ring> shades_in(const piece::Outline& outline, const Ring& part, const Point_m& c) {
  std::vector<Ring> shades;
  const auto add = [&](const std::vector<plan::PlanarPoint>& edges) {
    for (std::size_t i = 0; i < edges.size(); ++i) {
      const auto &p = edges[i], &q = edges[(i + 1) % edges.size()];
      Ring shade = behind(part, c, {in(m, p.x), in(m, p.y)}, {in(m, q.x), in(m, q.y)});
      if (shade.size() > 2) shades.push_back(std::move(shade));
    }
  };
  if (has_inward_corner(outline.outer)) add(outline.outer);
  for (const auto& hole : outline.holes) add(hole);
  return shades;
}
double hidden_m2(const piece::Outline& outline, const Ring& part, const Point_m& c) {
  double hidden = 0.0;
  for (const Ring& shade : shades_in(outline, part, c)) hidden += std::max(0.0, concrete_m2(outline, shade));
  return hidden;
}

std::vector<HalfPlane> sides_of_convex(const Ring& ring) {  // counter-clockwise
  constexpr double a_point_m = 1e-9;
  std::vector<HalfPlane> sides;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point_m &p = ring[i], &q = ring[(i + 1) % ring.size()];
    const double a = q.y - p.y, b = p.x - q.x;
    if (std::hypot(a, b) > a_point_m) sides.push_back({a, b, a * p.x + b * p.y});
  }
  return sides;
}

// The convex ring without the convex shade. A ring beside it stays whole.
void append_without(std::vector<Ring>& parts, Ring ring, const Ring& shade) {
  constexpr double a_sliver_m2 = 1e-12;
  const std::vector<HalfPlane> sides = sides_of_convex(shade);
  Ring both = ring;
  for (const HalfPlane& side : sides)
    if (both.size() > 2) both = clipped(both, side);
  if (both.size() < 3 || signed_area_m2(both) < a_sliver_m2) parts.push_back(std::move(ring));
  else append_outside(parts, std::move(ring), sides);
}

std::vector<plan::PlanarPoint> with_units(const Ring& ring) {
  std::vector<plan::PlanarPoint> points;
  for (const Point_m& p : ring) points.push_back({p.x * m, p.y * m});
  return points;
}

}  // namespace

namespace {

// Parts of the squares that do not overlap, with the number of their square.
template <class Each>
void for_each_part(const std::vector<Square>& squares, const Each& each) {
  for (std::size_t i = 0; i < squares.size(); ++i) {
    std::vector<Ring> parts{corners_of(squares[i])};
    for (std::size_t j = 0; j < i; ++j) {
      std::vector<Ring> left;
      for (Ring& part : parts) append_outside(left, std::move(part), sides_of(squares[j]));
      parts = std::move(left);
    }
    for (const Ring& part : parts) each(squares[i], part);
  }
}

}  // namespace

Area covered_area(const piece::Outline& outline, const std::vector<Square>& squares) {
  double covered_m2 = 0.0;
  for_each_part(squares, [&](const Square&, const Ring& part) {
    covered_m2 += signed_area_m2(inside(outline.outer, part));
    for (const auto& hole : outline.holes) covered_m2 += signed_area_m2(inside(hole, part));
  });
  return covered_m2 * m2;
}

Area reached_area(const piece::Outline& outline, const std::vector<Square>& squares) {
  double reached_m2 = 0.0;
  for_each_part(squares, [&](const Square& square, const Ring& part) {
    const Point_m centre{in(m, square.centre.x), in(m, square.centre.y)};
    const double whole = concrete_m2(outline, part);
    reached_m2 += std::max(0.0, whole - hidden_m2(outline, part, centre));
  });
  return reached_m2 * m2;
}

std::vector<std::vector<plan::PlanarPoint>> reached_parts(const piece::Outline& outline, const Square& square) {
  const Ring corners = corners_of(square);
  std::vector<Ring> parts{corners};
  for (const Ring& shade : shades_in(outline, corners, {in(m, square.centre.x), in(m, square.centre.y)})) {
    std::vector<Ring> left;
    for (Ring& part : parts) append_without(left, std::move(part), shade);
    parts = std::move(left);
  }
  std::vector<std::vector<plan::PlanarPoint>> reached;
  for (const Ring& part : parts)
    if (Ring solid = inside(outline.outer, part); solid.size() > 2) reached.push_back(with_units(solid));
  return reached;
}

piece::Outline covered_part(const piece::Outline& outline, const Square& square) {
  const Ring corners = corners_of(square);
  piece::Outline part{with_units(inside(outline.outer, corners)), {}};
  for (const auto& hole : outline.holes)
    if (Ring open = inside(hole, corners); open.size() > 2) part.holes.push_back(with_units(open));
  return part;
}

}  // namespace firstpick::resistances
