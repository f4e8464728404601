#include "demands/hung_system.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "demands/rope_bodies.hpp"

namespace firstpick::demands {

namespace {

constexpr double no_stretch = 1e-11;  // strain under the whole load that rounding cannot tell from none

Point scaled(const Position& p, Length size) { return {p.x / size, p.y / size, p.z / size}; }

int body_of(const std::optional<std::size_t>& carrier, int otherwise) {
  return carrier ? 1 + static_cast<int>(*carrier) : otherwise;
}

RopeSpan span_of(const HungPiece& piece, const HungLeg& leg, const LoadCentre& centre) {
  const Position from =
      leg.from_carrier ? leg.from_at - piece.carriers[*leg.from_carrier].centre : leg.from_at;
  const Position to = leg.at - (leg.to_carrier ? piece.carriers[*leg.to_carrier].centre : centre.at);
  return {{body_of(leg.from_carrier, in_space), scaled(from, centre.size)},
          {body_of(leg.to_carrier, 0), scaled(to, centre.size)}};
}

template <std::size_t bodies, class Legs>
void add_rope(const HungPiece& piece, const Legs& legs, HungSystem<bodies>& hung) {
  RopeSystem<bodies>& system = hung.system;
  Rope& rope = system.ropes[system.rope_count];
  rope.first_span = system.span_count;
  for (const std::size_t i : legs) {
    const HungLeg& leg = piece.legs[i];
    const double length = leg.length / hung.centre.size;
    rope.length += length;
    rope.give += length * (hung.centre.total / leg.axial_stiffness);
    hung.rope_of[i] = system.rope_count;
    hung.span_of[i] = system.span_count;
    system.spans[system.span_count++] = span_of(piece, leg, hung.centre);
    ++rope.span_count;
  }
  if (rope.give < no_stretch * rope.length) rope.give = 0.0;
  ++system.rope_count;
}

bool is_aside(const HungLeg& leg) {
  return !leg.from_carrier && (leg.from_at.x != Length{} || leg.from_at.y != Length{});
}

// The body and all that hangs below it.
template <std::size_t bodies>
std::array<bool, bodies> hanging_from_body(const RopeSystem<bodies>& system, std::size_t body) {
  std::array<bool, bodies> below{};
  below[body] = true;
  for (std::size_t sweep = 0; sweep < bodies; ++sweep)
    for (std::size_t s = 0; s < system.span_count; ++s) {
      const RopeSpan& span = system.spans[s];
      if (span.from.body != in_space && below[static_cast<std::size_t>(span.from.body)])
        below[static_cast<std::size_t>(span.to.body)] = true;
    }
  return below;
}

// Where all ropes that hold these bodies start, if that is one point.
template <std::size_t bodies>
std::optional<RopeEnd> apex_of(const RopeSystem<bodies>& system, const std::array<bool, bodies>& of) {
  constexpr double one_point = 1e-9;  // of the size
  std::optional<RopeEnd> apex;
  for (std::size_t s = 0; s < system.span_count; ++s) {
    const RopeSpan& span = system.spans[s];
    if (!of[static_cast<std::size_t>(span.to.body)]) continue;
    if (span.from.body != in_space && of[static_cast<std::size_t>(span.from.body)]) continue;
    if (apex && (apex->body != span.from.body || !(norm(apex->at - span.from.at) <= one_point))) return {};
    apex = span.from;
  }
  return apex;
}

template <std::size_t bodies>
void find_spins(RopeSystem<bodies>& system) {
  for (std::size_t body = 0; body < bodies; ++body) {
    const auto turns = hanging_from_body(system, body);
    const auto apex = apex_of(system, turns);
    if (!apex || (system.yaw_is_free && apex->body == in_space)) continue;  // the yaw of all
    const auto last = system.spins.begin() + static_cast<std::ptrdiff_t>(system.spin_count);
    if (std::find_if(system.spins.begin(), last, [&](const auto& known) { return known.turns == turns; }) == last)
      system.spins[system.spin_count++] = {*apex, turns};
  }
}

using Axes = std::array<Point, 3>;

Point turned(const Axes& axes, const Point& p) { return p.x * axes[0] + p.y * axes[1] + p.z * axes[2]; }

// The body's axes in space when `up` of the body is the vertical: of one hook by any yaw, of a tree as drawn.
Axes upright_axes(const Direction& up, bool as_drawn) {
  const Direction drawn_x{1.0, 0.0, 0.0}, drawn_y{0.0, 1.0, 0.0};
  Direction e1, e2;
  if (as_drawn) {
    const Direction& along = std::abs(up.x) < 0.9 ? drawn_x : drawn_y;
    e1 = along - dot(along, up) * up;
    e1 = (1.0 / norm(e1)) * e1;
    e2 = cross(up, e1);
  } else {
    e1 = cross(std::abs(up.x) < 0.5 ? drawn_x : drawn_y, up);
    e1 = (1.0 / norm(e1)) * e1;
    e2 = cross(up, e1);
  }
  return {{{e1.x, e2.x, up.x}, {e1.y, e2.y, up.y}, {e1.z, e2.z, up.z}}};
}

// One hook and the piece: the hook over the middle of the picks, as high as the legs allow on average, the
// load centre plumb below it.
Pose plumb_below_the_hook(const RopeSystem<1>& system, const Direction& upright) {
  Point middle;
  for (std::size_t s = 0; s < system.span_count; ++s)
    middle = middle + (1.0 / static_cast<double>(system.span_count)) * system.spans[s].to.at;
  double square = 0.0;  // of the height of the hook over the picks, on average
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    const Rope& rope = system.ropes[r];
    const double length = rope.length / static_cast<double>(rope.span_count);
    for (std::size_t s = rope.first_span; s < rope.first_span + rope.span_count; ++s) {
      const Point out = system.spans[s].to.at - middle;
      const double along = dot(out, upright);
      square += std::max(0.0, length * length - (dot(out, out) - along * along));
    }
  }
  const double height = square > 0.0 ? std::sqrt(square / static_cast<double>(system.span_count)) : 0.1;
  const Point hook = middle + 1.01 * height * upright;  // the legs a little stretched
  const double high = norm(hook);
  const Axes axes = upright_axes(high > 0.0 ? (1.0 / high) * hook : upright, false);
  return {-1.0 * turned(axes, hook), axes};
}

template <std::size_t bodies>
Point end_in_space(const std::array<Pose, bodies>& poses, const RopeEnd& end) {
  if (end.body == in_space) return end.at;
  const Pose& pose = poses[static_cast<std::size_t>(end.body)];
  return pose.origin + turned(pose.axes, end.at);
}

// Carriers above the middle of what hangs on them, from the piece upwards; then heights from the hook
// downwards, each leg at its drawn length.
template <std::size_t bodies>
void arrange(const HungPiece& piece, const HungSystem<bodies>& hung, std::array<Pose, bodies>& poses) {
  constexpr double least_drop = 0.3;  // of the length of a leg that would lie flatter
  const RopeSystem<bodies>& system = hung.system;
  for (std::size_t sweep = 0; sweep < bodies; ++sweep)
    for (std::size_t body = 1; body < bodies; ++body) {
      double x = 0.0, y = 0.0, count = 0.0;
      for (std::size_t s = 0; s < system.span_count; ++s) {
        const RopeSpan& span = system.spans[s];
        if (span.from.body != static_cast<int>(body)) continue;
        const Point apart = end_in_space(poses, span.to) - end_in_space(poses, span.from);
        x += apart.x, y += apart.y, count += 1.0;
      }
      if (count > 0.0) poses[body].origin = poses[body].origin + Point{x / count, y / count, 0.0};
    }
  for (std::size_t sweep = 0; sweep < bodies; ++sweep)
    for (std::size_t body = 0; body < bodies; ++body) {
      double lower = 0.0, count = 0.0;
      for (std::size_t i = 0; i < piece.legs.size(); ++i) {
        const RopeSpan& span = system.spans[hung.span_of[i]];
        if (span.to.body != static_cast<int>(body)) continue;
        const Point apart = end_in_space(poses, span.to) - end_in_space(poses, span.from);
        const double length = piece.legs[i].length / hung.centre.size;
        const double across = std::hypot(apart.x, apart.y);
        const double drop =
            std::sqrt(std::max(length * length - across * across, std::pow(least_drop * length, 2)));
        lower += apart.z + drop, count += 1.0;
      }
      if (count > 0.0) poses[body].origin.z -= lower / count;
    }
}

}  // namespace

bool is_tree(const HungPiece& piece) {
  return !piece.carriers.empty() || std::ranges::any_of(piece.legs, [](const HungLeg& leg) {
    return leg.from_at.x != Length{} || leg.from_at.y != Length{} || leg.from_at.z != Length{};
  });
}

template <std::size_t bodies>
HungSystem<bodies> hung_system(const HungPiece& piece) {
  HungSystem<bodies> hung{load_centre(piece), {}, {}, {}};
  hung.system.load[0] = 1.0;
  for (std::size_t k = 0; k + 1 < bodies; ++k) {
    hung.system.load[k + 1] = piece.carriers[k].weight / hung.centre.total;
    hung.system.is_point[k + 1] = piece.carriers[k].is_sheave;
  }
  hung.system.yaw_is_free = std::ranges::none_of(piece.legs, is_aside);
  std::array<bool, most_spans> in_group{};
  for (const auto& group : piece.equalised) {
    if (group.empty()) continue;
    add_rope(piece, group, hung);
    for (const std::size_t leg : group) in_group[leg] = true;
  }
  for (std::size_t leg = 0; leg < piece.legs.size(); ++leg)
    if (!in_group[leg]) add_rope(piece, std::array{leg}, hung);
  find_spins(hung.system);
  return hung;
}

template <std::size_t bodies>
std::array<Pose, bodies> hung_start(const HungPiece& piece, const HungSystem<bodies>& hung) {
  const Direction upright = (1.0 / norm(piece.upright)) * piece.upright;
  std::array<Pose, bodies> poses;
  if constexpr (bodies == 1)
    if (!is_tree(piece)) return {plumb_below_the_hook(hung.system, upright)};

  Point below;  // the middle of the hooks
  double hooks = 0.0;
  for (std::size_t s = 0; s < hung.system.span_count; ++s) {
    if (hung.system.spans[s].from.body != in_space) continue;
    below = below + hung.system.spans[s].from.at;
    hooks += 1.0;
  }
  poses[0] = {(1.0 / std::max(1.0, hooks)) * below, upright_axes(upright, true)};
  for (std::size_t body = 1; body < bodies; ++body)
    poses[body] = {poses[0].origin, upright_axes({0.0, 0.0, 1.0}, true)};
  arrange(piece, hung, poses);
  return poses;
}

#define FIRSTPICK_FOR(n)                                          \
  template HungSystem<n> hung_system<n>(const HungPiece&);        \
  template std::array<Pose, n> hung_start<n>(const HungPiece&, const HungSystem<n>&);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
