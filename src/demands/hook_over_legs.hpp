// Where one hook comes to stand over legs that do not stretch, on a piece that is held in its attitude, and how the
// pull of the hook may come to the legs.
//
//   highest H along up    with    |H - a_i| <= L_i    for each leg; at it   up = sum of t_i u_i,  t_i >= 0
//
// t_i is the tension of a leg over the pull of the hook, u_i the direction from insert to hook. One, two or three legs
// decide the place (the balls are convex: there is one highest point). Two legs over a sheave at the hook:
//
//   |H - a_1| + |H - a_2| <= L_1 + L_2         the highest point of an ellipsoid
//
// Shares: every set of at most three legs that balances the pull at H, as in basic_distributions(): no sharing gives
// any leg more than the worst of these. Source: statics; derived.
#pragma once

#include <span>
#include <vector>

#include "demands/hanging.hpp"

namespace firstpick::demands {

struct HookOverLegs {
  Position at;
  std::vector<std::vector<double>> shares;  // of the pull; one list for each admissible set, in the order of the legs
};

// `up` is a unit vector. Not assessed: no legs or more than 16; a leg without a finite length; legs that cannot meet;
// equalised legs other than one pair that is all there is; no set of legs that balances.
Outcome<HookOverLegs> hook_over_legs(std::span<const HungLeg> legs,
                                     std::span<const std::vector<std::size_t>> equalised, const Direction& up);

}  // namespace firstpick::demands
