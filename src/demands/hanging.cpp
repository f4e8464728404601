// Start: the hook over the middle of the picks, as high as the legs allow on average, the load centre plumb
// below it.
// Source: statics (equilibrium and least potential energy); derived, no outside constant.

#include "demands/hanging.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "demands/hanging_refusal.hpp"
#include "demands/imbalance.hpp"
#include "demands/leg_force.hpp"
#include "demands/rope_equilibrium.hpp"
#include "demands/unrest.hpp"

namespace firstpick::demands {

namespace {

constexpr double balanced_within = 1e-9;  // of the total load, of load x size, of the size
constexpr double no_stretch = 1e-11;      // strain under the whole load that rounding cannot tell from none

// Lengths over the size, forces over the total load, positions from the load centre.
struct ScaledPiece {
  LoadCentre centre;
  RopeSystem<1> system;
  std::array<std::size_t, most_ropes> rope_of{};  // of each leg

  Point scaled(const Position& p) const {
    const Position from_centre = p - centre.at;
    return {from_centre.x / centre.size, from_centre.y / centre.size, from_centre.z / centre.size};
  }
  template <class Indices>
  void add_rope(const HungPiece& piece, const Indices& legs) {
    Rope& rope = system.ropes[system.rope_count];
    rope.first_span = system.span_count;
    for (const std::size_t leg : legs) {
      const double length = piece.legs[leg].length / centre.size;
      rope.length += length;
      rope.give += length * (centre.total / piece.legs[leg].axial_stiffness);
      rope_of[leg] = system.rope_count;
      system.spans[system.span_count++] = {{in_space, {}}, {0, scaled(piece.legs[leg].at)}};
      ++rope.span_count;
    }
    if (rope.give < no_stretch * rope.length) rope.give = 0.0;
    ++system.rope_count;
  }
};

ScaledPiece scaled(const HungPiece& piece) {
  ScaledPiece scaled{load_centre(piece), {}, {}};
  scaled.system.load[0] = 1.0;
  std::array<bool, most_ropes> in_group{};
  for (const auto& group : piece.equalised) {
    if (group.empty()) continue;
    scaled.add_rope(piece, group);
    for (const std::size_t leg : group) in_group[leg] = true;
  }
  for (std::size_t leg = 0; leg < piece.legs.size(); ++leg)
    if (!in_group[leg]) scaled.add_rope(piece, std::array{leg});
  return scaled;
}

// The pose that has the hook at `hook` (in piece axes from the load centre) and the load centre plumb below
// it.
Pose plumb_below(const Point& hook, const Direction& up) {
  const Direction aside = std::abs(up.x) < 0.5 ? Direction{1.0, 0.0, 0.0} : Direction{0.0, 1.0, 0.0};
  Direction e1 = cross(aside, up);
  e1 = (1.0 / norm(e1)) * e1;
  const Direction e2 = cross(up, e1);
  return {{-dot(e1, hook), -dot(e2, hook), -dot(up, hook)},
          {{{e1.x, e2.x, up.x}, {e1.y, e2.y, up.y}, {e1.z, e2.z, up.z}}}};
}

Pose start(const ScaledPiece& scaled, const Direction& upright) {
  const RopeSystem<1>& system = scaled.system;
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
  return plumb_below(hook, high > 0.0 ? (1.0 / high) * hook : upright);
}

Hanging hanging_from(const HungPiece& piece, const ScaledPiece& scaled, const Rest<1>& rest,
                     const Direction& upright) {
  const Pose& pose = rest.poses[0];
  Hanging hanging;
  hanging.up = {pose.axes[0].z, pose.axes[1].z, pose.axes[2].z};
  hanging.up = (1.0 / norm(hanging.up)) * hanging.up;
  const Direction hook{-dot(pose.axes[0], pose.origin), -dot(pose.axes[1], pose.origin),
                       -dot(pose.axes[2], pose.origin)};
  hanging.hook = scaled.centre.at + hook * scaled.centre.size;
  hanging.tilt = std::atan2(norm(cross(upright, hanging.up)), dot(upright, hanging.up)) * radian;
  hanging.legs.reserve(piece.legs.size());
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const double share = rest.tension[scaled.rope_of[i]];
    hanging.legs.push_back(
        leg_force(piece.legs[i].at, share * scaled.centre.total, hanging.hook, hanging.up));
  }
  return hanging;
}

}  // namespace

Outcome<Hanging> hang(const HungPiece& piece) {
  if (auto refused = hanging_refusal(piece)) return *std::move(refused);

  const ScaledPiece scaled_piece = scaled(piece);
  const Direction upright = (1.0 / norm(piece.upright)) * piece.upright;
  const Rest<1> rest = come_to_rest<1>(scaled_piece.system, {start(scaled_piece, upright)});
  Hanging hanging = hanging_from(piece, scaled_piece, rest, upright);

  if (rest.ending == Ending::not_found)
    return NotAssessed{"no position was found in which the legs meet at one hook and carry the piece",
                       "check the lengths of the legs against the places of the inserts"};
  if (rest.ending == Ending::unstable) return would_move(piece, hanging);
  if (!(dot(hanging.up, upright) > -1e-6)) return rolled_over(piece, hanging);

  const Imbalance left = imbalance(piece, hanging);
  if (!(left.force <= balanced_within && left.moment <= balanced_within && left.length <= balanced_within) ||
      left.a_leg_pushes)
    return NotAssessed{"the forces found on the hanging piece do not balance",
                       "check the legs for extreme numbers"};
  hanging.force_residual = left.force;
  hanging.moment_residual = left.moment;
  hanging.stable = true;
  return hanging;
}

}  // namespace firstpick::demands
