// Balance: Newton on forces and lengths together, poses and tensions unknown at once, each rope with its true
// give c:
//
//   [ sum t d2L   dL^T ] [ move ]     [ - load gradient ]
//   [    dL        -c  ] [  t   ]  =  [   - (L - L0)    ]        for the ropes that are taut
//
// which does not grow worse as c goes to zero. Which ropes are taut is part of each step: t >= 0, a slack
// rope not too long. Ropes that do not stretch may be `held`: c (t - t before) instead of c t, which vanishes
// as t settles, so that they keep their length exactly; without that they get a strain of 1e-7 under the
// whole load, which settles which of them are taut where equilibrium leaves it open. A step leaves a
// second-order error of length, which must not swing the tensions of stiff ropes: they give at least the
// square of the shortest step so far.
#pragma once

#include "demands/rope_attitude.hpp"

namespace firstpick::demands {

enum class Rigid { nearly, held };

// Newton's steps from `at` with `tension`, which are off by about `off` of the size; false if they do not end
// in a balance.
template <std::size_t bodies>
bool balance(const RopeSystem<bodies>& system, Attitude<bodies>& at, Tensions& tension, double off,
             Rigid rigid);

}  // namespace firstpick::demands
