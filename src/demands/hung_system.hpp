// A hung piece as the kernel's system of bodies and ropes: lengths over the size, forces over the total load.
// Body 0 is the piece, its origin the load centre; body 1 + k is carrier k, its origin its centre of gravity.
#pragma once

#include "demands/hanging.hpp"
#include "demands/imbalance.hpp"
#include "demands/rope_system.hpp"

namespace firstpick::demands {

template <std::size_t bodies>
struct HungSystem {
  LoadCentre centre;
  RopeSystem<bodies> system;
  std::array<std::size_t, most_spans> rope_of{};  // of each leg
  std::array<std::size_t, most_spans> span_of{};
};

template <std::size_t bodies>
HungSystem<bodies> hung_system(const HungPiece& piece);

// Where the search starts: the piece upright with its load centre below the hook, as deep as the legs allow;
// carriers above what hangs on them.
template <std::size_t bodies>
std::array<Pose, bodies> hung_start(const HungPiece& piece, const HungSystem<bodies>& hung);

}  // namespace firstpick::demands
