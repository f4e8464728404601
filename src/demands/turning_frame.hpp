// The axes in which a piece is turned.
//
//   up(t)    = flat_up cos t + rising sin t        the vertical, in piece axes, when the piece has turned by t
//   level(t) = rising cos t - flat_up sin t        level, square to the axis, towards the side that rises
//
// t is the angle of the face that looks down as cast, from horizontal. Source: geometry.
#pragma once

#include <array>

#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

struct TurningFrame {
  Position on_axis;    // a point of the axis: the first point of the edge
  Direction along;     // unit vector along the axis, level all the way
  Length reach{};      // of the edge, from on_axis along `along`; zero where there is no edge
  Direction flat_up;   // what is up at 0 degrees: the z axis of the piece
  Direction rising;    // level at 0 degrees, square to the axis, from the axis to the side that rises
};

Direction up_at(const TurningFrame& frame, Angle angle);
Direction level_at(const TurningFrame& frame, Angle angle);

// About the edge between two points; the side that rises is that of `centre`.
// Not assessed: an edge that is not level as cast, or plumb above or below the centre.
Outcome<TurningFrame> frame_about_edge(const std::array<Position, 2>& edge, const Position& centre);

// Between two hooks: from the picks of the tail to those of the main hook, which rises.
// Not assessed: picks plumb above each other as cast.
Outcome<TurningFrame> frame_between(const Position& tail, const Position& main);

}  // namespace firstpick::demands
