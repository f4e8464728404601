#include "demands/side_pull.hpp"

#include <algorithm>
#include <cmath>

#include "demands/base_plane.hpp"
#include "demands/convex_hull.hpp"

namespace firstpick::demands {

namespace {

constexpr Length one_place = 1.0 * mm;  // picks nearer than that are one

// A pick seen from the centre of gravity: level distances and height.
struct Seen {
  Length x, y, z;
};

struct View {
  Direction u, v, up;
  Position centre;
  Seen of(const Position& p) const {
    const Position out = p - centre;
    return {dot(u, out), dot(v, out), dot(up, out)};
  }
};

// Rolling about the line through `a` along (cx, cy), the centre of gravity `inside` of it.
Roll about(const Seen& a, double cx, double cy, Length inside, Length depth, const std::vector<Seen>& corners,
           Force side_pull, Force weight) {
  Length reach{};
  for (const Seen& corner : corners) {
    const Length aside = cx * (corner.y - a.y) - cy * (corner.x - a.x), down = corner.z - a.z;
    reach = std::max({reach, Length{abs(aside)}, Length{abs(down)}});
  }
  Roll roll{.pull = Moment::from_value(side_pull.value() * reach.value()), .inside = inside, .depth = depth};
  roll.angle = roll_under(roll.pull, weight, inside, depth);
  return roll;
}

}  // namespace

Angle roll_under(Moment pull, Force weight, Length inside, Length depth) {
  constexpr Angle over = 180.0 * deg;
  const Moment held = Moment::from_value((weight * inside).value());
  if (!is_finite(pull) || !(weight > Force{}) || !(inside >= Length{}) || !is_finite(depth)) return over;
  if (depth > Length{} ? pull <= held : pull < held) return Angle{};
  if (!(depth > Length{})) return over;
  const double reach_m = std::hypot(in(m, inside), in(m, depth));
  const double sine_of = pull.value() / (weight.value() * reach_m);
  if (!(sine_of <= 1.0)) return over;
  return (std::asin(sine_of) - std::atan2(in(m, inside), in(m, depth))) * radian;
}

Outcome<Roll> worst_roll(const std::vector<Position>& picks, const Position& centre, Force weight, Force side_pull,
                         const piece::Body& body, const Direction& up) {
  if (picks.empty() || !(weight > Force{}) || !is_finite(weight))
    return NotAssessed{"the piece has no picks or no weight", "legs in [[rigging]]"};
  const Direction aside = std::abs(up.x) < 0.5 ? Direction{1.0, 0.0, 0.0} : Direction{0.0, 1.0, 0.0};
  Direction u = cross(aside, up);
  u = (1.0 / norm(u)) * u;
  const View view{u, cross(up, u), up, centre};

  std::vector<Seen> seen, corners;
  for (const Position& p : picks) seen.push_back(view.of(p));
  const std::vector<Position> of_body = corners_of(body);
  corners.reserve(of_body.size());
  for (const Position& p : of_body) corners.push_back(view.of(p));
  std::vector<plan::PlanarPoint> flat;
  for (const Seen& s : seen) flat.push_back({s.x, s.y});
  const std::vector<plan::PlanarPoint> hull = convex_hull(flat);
  const auto height_of = [&](const plan::PlanarPoint& p) {
    const auto found = std::ranges::find_if(seen, [&](const Seen& s) { return s.x == p.x && s.y == p.y; });
    return found->z;
  };

  std::optional<Roll> worst;
  const auto keep = [&](const Roll& roll) {
    if (!worst || roll.angle > worst->angle) worst = roll;
  };
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const auto &a = hull[i], &b = hull[(i + 1) % hull.size()];
    const Length za = height_of(a), zb = height_of(b);
    const Length length = root((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    if (!(length > one_place)) {  // one pick: about any line through it
      keep(about({a.x, a.y, za}, 1.0, 0.0, Length{}, za, corners, side_pull, weight));
      keep(about({a.x, a.y, za}, 0.0, 1.0, Length{}, za, corners, side_pull, weight));
      continue;
    }
    const double cx = (b.x - a.x) / length, cy = (b.y - a.y) / length;
    // Seen from the centre of gravity, which is the origin: inside is to the left of a to b.
    const Length inside = hull.size() < 3 ? Length{} : std::max(Length{}, Length{cy * a.x - cx * a.y});
    const double along = -(cx * (a.x / length).value() + cy * (a.y / length).value());
    const Length depth = za + std::clamp(along, 0.0, 1.0) * (zb - za);
    keep(about({a.x, a.y, za}, cx, cy, inside, depth, corners, side_pull, weight));
    if (hull.size() == 2)  // in line: pitching about either end too
      keep(about({a.x, a.y, za}, -cy, cx, Length{abs(cx * a.x + cy * a.y)}, za, corners, side_pull, weight));
  }
  return *worst;
}

}  // namespace firstpick::demands
