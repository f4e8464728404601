// Rigid bodies on ropes that only pull, as plain numbers: lengths over the size of the system, forces over
// its total load, so that 1 is "large" everywhere. What the kernel of the rigging statics works on.
//
// Points in space are hooks. With one hook, or hooks on one vertical, turning everything about it changes
// nothing: the yaw is free. So it is with bodies that all their ropes hold from one point: they may spin about the
// plumb line through it, and no force and no height changes.
#pragma once

#include <array>
#include <cstddef>

#include "units/vector.hpp"

namespace firstpick::demands {

inline constexpr std::size_t most_ropes = 24;
inline constexpr std::size_t most_spans = 24;
inline constexpr int in_space = -1;

using Point = Vector<double>;

struct RopeEnd {
  int body = in_space;
  Point at;  // in the body's axes from its origin; in space from the first hook, z up
};

// A straight piece of rope. A rope over a sheave has several; they share one tension.
struct RopeSpan {
  RopeEnd from, to;
};

struct Rope {
  std::size_t first_span = 0, span_count = 0;
  double length = 0.0;  // unstretched, over all spans
  double give = 0.0;    // stretch per tension; zero: does not stretch
};

// Bodies that hang from one point of another body or of space, and may spin below it.
template <std::size_t bodies>
struct Spin {
  RopeEnd apex;
  std::array<bool, bodies> turns{};
};

template <std::size_t bodies>
struct RopeSystem {
  std::array<double, bodies> load{};    // straight down at the origin of the body
  std::array<bool, bodies> is_point{};  // a sheave: all its ropes end at its origin, and it has no turn
  bool yaw_is_free = true;
  std::size_t span_count = 0, rope_count = 0, spin_count = 0;
  std::array<RopeSpan, most_spans> spans{};
  std::array<Rope, most_ropes> ropes{};
  std::array<Spin<bodies>, bodies> spins{};
};

struct Pose {
  Point origin;               // in space
  std::array<Point, 3> axes;  // the body's x, y, z in space
};

using Tensions = std::array<double, most_ropes>;

}  // namespace firstpick::demands
