// Rigid bodies at rest on ropes that only pull: a minimum of their energy over the poses (6 unknowns for each
// body).
//
//   E = sum over bodies of load * height + sum over ropes of <L - L0>^2 / (2 c),      <.> = max(., 0)
//
// L is the length of a rope, the sum over its spans; c is its give, stretch per tension. c = 0 is a rope that
// does not stretch: L <= L0 as a constraint, its tension the multiplier. Where equilibrium leaves the sharing
// between such ropes open, they share as ropes of equal E A would (rope_sharing.hpp).
//
// In two steps, each with its own file: downhill with softened ropes, which finds the valley
// (rope_descent.hpp), then the balance with the true ropes, which finds its floor (rope_balance.hpp). If the
// balance fails, or is one where the bodies would not stay, downhill is carried on with stiffer ropes and the
// balance repeated.
//
// Source: principle of least potential energy; derived, no outside constant.
#pragma once

#include "demands/rope_system.hpp"

namespace firstpick::demands {

enum class Ending {
  at_rest,   // forces balance, no rope pushes or is too long, every small move but the free yaw costs energy
  unstable,  // forces balance, but some small move costs nothing or gains
  not_found,
};

template <std::size_t bodies>
struct Rest {
  Ending ending = Ending::not_found;
  std::array<Pose, bodies> poses{};
  Tensions tension{};       // where nothing was found, those of the last valley, roughly
  std::size_t loosest = 0;  // unstable: the body that moves most
};

template <std::size_t bodies>
Rest<bodies> come_to_rest(const RopeSystem<bodies>& system, const std::array<Pose, bodies>& start);

}  // namespace firstpick::demands
