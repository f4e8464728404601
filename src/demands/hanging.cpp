// Source: statics (equilibrium and least potential energy); derived, no outside constant.

#include "demands/hanging.hpp"

#include <cmath>

#include "demands/hanging_refusal.hpp"
#include "demands/hung_system.hpp"
#include "demands/imbalance.hpp"
#include "demands/leg_force.hpp"
#include "demands/rope_equilibrium.hpp"
#include "demands/unrest.hpp"

namespace firstpick::demands {

namespace {

// A vector of space in the axes of the piece.
Direction in_piece_axes(const Pose& piece, const Point& v) {
  return {dot(piece.axes[0], v), dot(piece.axes[1], v), dot(piece.axes[2], v)};
}

template <std::size_t bodies>
CarrierPose carrier_pose(const HungSystem<bodies>& hung, const Rest<bodies>& rest, const Carrier& carrier,
                         std::size_t body) {
  const Pose& piece = rest.poses[0];
  const Pose& pose = rest.poses[body];
  CarrierPose found;
  for (std::size_t i = 0; i < 3; ++i) found.axes[i] = in_piece_axes(piece, pose.axes[i]);
  const Position centre =
      hung.centre.at + in_piece_axes(piece, pose.origin - piece.origin) * hung.centre.size;
  found.origin = centre - (found.axes[0] * carrier.centre.x + found.axes[1] * carrier.centre.y +
                           found.axes[2] * carrier.centre.z);
  const Point& z = pose.axes[2];
  if (!carrier.is_sheave) found.tilt = std::atan2(std::hypot(z.x, z.y), z.z) * radian;
  return found;
}

Position on(const CarrierPose& carrier, const Position& at) {
  return carrier.origin + carrier.axes[0] * at.x + carrier.axes[1] * at.y + carrier.axes[2] * at.z;
}

template <std::size_t bodies>
Hanging hanging_from(const HungPiece& piece, const HungSystem<bodies>& hung, const Rest<bodies>& rest,
                     const Direction& upright) {
  const Pose& pose = rest.poses[0];
  Hanging hanging;
  hanging.up = {pose.axes[0].z, pose.axes[1].z, pose.axes[2].z};
  hanging.up = (1.0 / norm(hanging.up)) * hanging.up;
  const auto of_space = [&](const Point& p) {
    return hung.centre.at + in_piece_axes(pose, p - pose.origin) * hung.centre.size;
  };
  hanging.hook = of_space({});
  hanging.tilt = std::atan2(norm(cross(upright, hanging.up)), dot(upright, hanging.up)) * radian;
  for (std::size_t k = 0; k + 1 < bodies; ++k)
    hanging.carriers.push_back(carrier_pose(hung, rest, piece.carriers[k], k + 1));
  hanging.legs.reserve(piece.legs.size());
  hanging.spans.reserve(piece.legs.size());
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const HungLeg& leg = piece.legs[i];
    const Position from = leg.from_carrier ? on(hanging.carriers[*leg.from_carrier], leg.from_at)
                                           : of_space(hung.system.spans[hung.span_of[i]].from.at);
    const Position to = leg.to_carrier ? on(hanging.carriers[*leg.to_carrier], leg.at) : leg.at;
    hanging.spans.push_back({from, to});
    hanging.legs.push_back(leg_force(to, rest.tension[hung.rope_of[i]] * hung.centre.total, from, hanging.up));
  }
  return hanging;
}

// A carrier whose lower legs are all but slack, if there is one.
template <std::size_t bodies>
const Carrier* idle_carrier(const HungPiece& piece, const HungSystem<bodies>& hung, const Rest<bodies>& rest) {
  constexpr double next_to_nothing = 1e-2;  // of the load
  for (std::size_t k = 0; k < piece.carriers.size(); ++k) {
    double carries = 0.0;
    for (std::size_t i = 0; i < piece.legs.size(); ++i)
      if (piece.legs[i].from_carrier == k) carries += rest.tension[hung.rope_of[i]];
    if (carries < next_to_nothing) return &piece.carriers[k];
  }
  return nullptr;
}

template <std::size_t bodies>
Outcome<Hanging> hang_bodies(const HungPiece& piece) {
  const HungSystem<bodies> hung = hung_system<bodies>(piece);
  const Direction upright = (1.0 / norm(piece.upright)) * piece.upright;
  const Rest<bodies> rest = come_to_rest<bodies>(hung.system, hung_start<bodies>(piece, hung));
  Hanging hanging = hanging_from(piece, hung, rest, upright);

  if (rest.ending != Ending::at_rest)
    if (const Carrier* idle = idle_carrier(piece, hung, rest)) return hangs_idle(*idle);
  if (rest.ending == Ending::not_found)
    return NotAssessed{"no position was found in which the legs meet at one hook and carry the piece",
                       "check the lengths of the legs against the places of the inserts"};
  if (rest.ending == Ending::unstable) return would_stir(piece, hanging, rest.loosest);
  if (!(dot(hanging.up, upright) > -1e-6)) return rolled_over(piece, hanging);

  const Imbalance left = imbalance(piece, hanging);
  if (!is_balanced(left))
    return NotAssessed{"the forces found on the hanging piece do not balance",
                       "check the legs for extreme numbers"};
  hanging.force_residual = left.force;
  hanging.moment_residual = left.moment;
  hanging.stable = true;
  return hanging;
}

}  // namespace

Outcome<Hanging> hang(const HungPiece& piece) {
  if (auto refused = hanging_refusal(piece)) return *std::move(refused);
  switch (piece.carriers.size()) {
    case 0: return hang_bodies<1>(piece);
    case 1: return hang_bodies<2>(piece);
    case 2: return hang_bodies<3>(piece);
    case 3: return hang_bodies<4>(piece);
    case 4: return hang_bodies<5>(piece);
    case 5: return hang_bodies<6>(piece);
    default: return hang_bodies<7>(piece);
  }
}

}  // namespace firstpick::demands
