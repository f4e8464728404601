// A piece while it is turned: at each angle who holds it, and with what. The attitude is given by the angle; legs do not
// stretch, the hooks stand plumb over their legs (a crane that follows), nothing moves.
//
//   about an edge    F x_hook = W x            N = W - F            (turn_about_edge.cpp)
//   off a table      F = W                                          (turn_off_table.cpp)
//   two hooks        F_main (x_main - x_tail) = W (x - x_tail)      F_tail = W - F_main     (turn_between_hooks.cpp)
//
// x: level distances, square to the axis of the turn. Source: statics; one file each.
#pragma once

#include <vector>

#include "demands/hook_over_legs.hpp"
#include "demands/turning_frame.hpp"
#include "plan/plan.hpp"

namespace firstpick::demands {

struct TurnedPiece {
  TurningFrame frame;
  plan::TurnMethod method = plan::TurnMethod::edge;
  std::vector<HungLeg> legs;                          // to the main hook
  std::vector<std::vector<std::size_t>> equalised;    // of these
  std::vector<HungLeg> tail_legs;                     // two hooks only
  std::vector<std::vector<std::size_t>> tail_equalised;
  bool let_down = false;                              // all of the turn lies past the balance on the edge
  std::vector<loads::AppliedLoad> loads;              // straight down, each at its own point
};

// The reaction of the edge: straight up, at a point of it.
struct EdgeReaction {
  Force upward{};
  Position at;       // in piece axes
};

// What holds the piece at one angle: with the loads, everything that a check of the piece itself needs.
struct TurnPose {
  Angle angle{};
  Direction up;                                       // the vertical, in piece axes
  Position hook, tail_hook;                           // in piece axes
  Force main_pull{}, tail_pull{};                     // of the hooks on the piece, straight up
  EdgeReaction edge;                                  // zero where nothing stands on an edge
  bool slack = false;                                 // past its balance on the edge: the hook does not hold it
  Angle sideways{};                                   // how far it leans out of the plane of two hooks
  std::vector<Sharing> sharings;                      // every admissible one: main legs, then tail legs
};

// Not assessed: loads that are not finite and above zero; legs that hook_over_legs() refuses; and, by method, a piece
// that leaves its edge, rolls off the end of it, or hangs on one of two hooks alone.
Outcome<TurnPose> turn_pose(const TurnedPiece& piece, Angle angle);

// The angle past which a piece falls over its edge by itself: the centre of the loads stands plumb over it.
//   t_b = atan(c / z)      c, z: distance of the load centre from the edge along and square to the face as cast
Angle balance_angle(const TurnedPiece& piece);

Outcome<TurnPose> turn_about_edge(const TurnedPiece& piece, Angle angle);
Outcome<TurnPose> turn_off_table(const TurnedPiece& piece, Angle angle);
Outcome<TurnPose> turn_between_hooks(const TurnedPiece& piece, Angle angle);

}  // namespace firstpick::demands
