// Where the bodies are, and how the lengths of the ropes change when they move.
//
// A move of a body is a shift of its origin and a turn about it, both in space: position + shift, exp(turn x)
// axes. A span of length l along u whose ends move apart by D dx, D = [1, -arm x] at each end, lengthens by
//
//   dl = g dx,   g = u D;     d2l = (D D - g g)/l + at each end (u r + r u)/2 - (u.r) 1
//
// with r the arm, from the origin to the end; the last is the second order of the turn. Source: geometry.
#pragma once

#include <array>

#include "demands/rope_system.hpp"

namespace firstpick::demands {

template <std::size_t bodies>
using Move = std::array<double, 6 * bodies>;  // of each body: shift x, y, z, turn x, y, z

template <std::size_t bodies>
using Curvature = std::array<std::array<double, 6 * bodies>, 6 * bodies>;

// Poses and what follows from them.
template <std::size_t bodies>
struct Attitude {
  struct Reach {
    std::array<Point, 2> arm;  // in space; zero for an end in space
    Point direction;           // from end to end
    double length;
  };
  std::array<Pose, bodies> poses;
  std::array<Reach, most_spans> reach;
  Tensions length;  // of each rope
};

template <std::size_t bodies>
Attitude<bodies> attitude(const RopeSystem<bodies>& system, const std::array<Pose, bodies>& poses);

template <std::size_t bodies>
Attitude<bodies> moved(const RopeSystem<bodies>& system, const Attitude<bodies>& from,
                       const Move<bodies>& move);

// dL of a rope for a unit move; adds tension * d2L to `curvature`.
template <std::size_t bodies>
Move<bodies> pull_of(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Rope& rope,
                     double tension, Curvature<bodies>& curvature);

// Turning everything about the vertical through the hook costs nothing where the yaw is free, nor does a spin, nor
// turning a point. A unit of energy on just those moves makes Newton's equations regular and takes no part in
// the answer.
template <std::size_t bodies>
Curvature<bodies> free_curvature(const RopeSystem<bodies>& system, const Attitude<bodies>& at);

}  // namespace firstpick::demands
