// Rigid bodies on ropes that only pull, as plain numbers: lengths over the size of the system, forces over
// its total load, so that 1 is "large" everywhere. What the kernel of the rigging statics works on.
//
// All points in space lie on one vertical, that of the hook, so that turning everything about it changes
// nothing.
#pragma once

#include <array>
#include <cstddef>

#include "units/vector.hpp"

namespace firstpick::demands {

inline constexpr std::size_t most_ropes = 16;
inline constexpr std::size_t most_spans = 16;
inline constexpr int in_space = -1;

using Point = Vector<double>;

struct RopeEnd {
  int body = in_space;
  Point at;  // in the body's axes from its origin; in space from the hook, z up
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
  std::array<double, bodies> load{};  // straight down at the origin of the body
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
