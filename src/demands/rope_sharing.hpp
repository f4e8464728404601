// How ropes that do not stretch share a load where equilibrium leaves it open: as ropes of equal E A would.
//
//   least sum of L t^2 (their strain energy)   with   sum of t dL unchanged
//
// so L t = dL y with (sum of dL dL / L) y = sum of t dL. Ropes that stretch keep their tension. Source:
// theorem of least work; derived. Kept as it was where a rope would have to push: then the set of taut ropes
// is the answer.
#pragma once

#include "demands/rope_attitude.hpp"

namespace firstpick::demands {

template <std::size_t bodies>
void share_evenly(const RopeSystem<bodies>& system, const Attitude<bodies>& at, Tensions& tension);

}  // namespace firstpick::demands
