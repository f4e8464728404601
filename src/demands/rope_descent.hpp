// Downhill: lowers the energy of bodies on ropes until a Newton step is short.
//
//   E = sum over bodies of load * height + sum over ropes of <L - L0>^2 / (2 c),      <.> = max(., 0)
//
// Every rope is given at least some stretch c, because stiff ropes make the energy a narrow curved valley.
// Newton steps; where the energy curves down, curvature is added on all directions until it curves up; a step
// is shortened until the energy falls. It therefore ends in a valley from any start.
#pragma once

#include "demands/rope_attitude.hpp"

namespace firstpick::demands {

struct Descent {
  double least_strain;  // of a rope under the whole load
  double close;         // ends with a step shorter than this
};

template <std::size_t bodies>
void go_downhill(const RopeSystem<bodies>& system, Attitude<bodies>& at, const Descent& descent);

// The give of a rope in this descent.
inline double give_in(const Descent& descent, const Rope& rope) {
  const double least = descent.least_strain * rope.length;
  return rope.give > least ? rope.give : least;
}

// Adds as much curvature on all directions as makes it curve up in each; how much that was.
template <std::size_t bodies>
double make_bowl(Curvature<bodies>& curvature);

// What is not a number is none.
template <std::size_t bodies>
bool is_bowl(const Curvature<bodies>& curvature);

}  // namespace firstpick::demands
