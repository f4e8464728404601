// Rigid bodies on ropes that only pull, as plain numbers: lengths over the size of the system, forces over
// its total load, so that 1 is "large" everywhere. What the kernel of the rigging statics works on.
//
// Points in space are hooks. With one hook, or hooks on one vertical, turning everything about it changes
// nothing: the yaw is free.
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

template <std::size_t bodies>
struct RopeSystem {
  std::array<double, bodies> load{};    // straight down at the origin of the body
  std::array<bool, bodies> is_point{};  // a sheave: all its ropes end at its origin, and it has no turn
  bool yaw_is_free = true;
  std::size_t span_count = 0, rope_count = 0;
  std::array<RopeSpan, most_spans> spans{};
  std::array<Rope, most_ropes> ropes{};
};

struct Pose {
  Point origin;               // in space
  std::array<Point, 3> axes;  // the body's x, y, z in space
};

using Tensions = std::array<double, most_ropes>;

}  // namespace firstpick::demands
