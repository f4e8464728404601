// The piece as it hangs: rigid bodies on legs that only pull. A piece on one hook, or a tree of beams, frames
// and sheaves between one hook or more and the piece.
//
// Formulation: minimise sum over ropes of EA/(2 L0) <L - L0>^2 minus the work of the loads over the poses of
// piece, beams and sheaves (6 unknowns each, 3 of a sheave; with one hook the yaw is free), the loads dead and
// straight down. A rope runs over one or more spans: a sheave joins the spans of an equalised group into one
// rope (rope_equilibrium.hpp). A sheave and a link have no size, a beam does not bend.
// E A may be infinite: a leg that does not stretch. It is then solved as a constraint on the length, not as a
// very stiff spring, so that closed forms of statics hold to rounding. Where such legs leave the sharing open
// (four legs on a rigid piece) they share as legs of equal E A would; basic_distributions() tells what else
// equilibrium allows.
// Limits: at most 24 legs and 6 beams and sheaves; no mass of the legs; no contact of legs with the concrete.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "loads/applied_load.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

inline constexpr std::size_t most_carriers = 6;

struct HungLeg {
  std::string to;           // insert, or what hangs on its lower end: a point of a beam, a sheave
  Position at;              // of the lower end, in the axes of what hangs there
  Length length{};          // unstretched
  Force axial_stiffness{};  // E A; infinite: does not stretch
  std::optional<std::size_t> from_carrier{};  // index; absent: from a hook
  Position from_at{};       // in the carrier's axes; of a hook in space, from the first hook, z up
  std::optional<std::size_t> to_carrier{};    // index; absent: to the piece
};

// A beam, a frame or a sheave. Its axes are drawn along those of the piece as it hangs.
struct Carrier {
  std::string id;
  Force weight{};
  Position centre;         // of gravity, in its own axes; of a sheave its origin
  bool is_sheave = false;  // all its legs end at its origin
};

struct HungPiece {
  std::vector<HungLeg> legs;
  // Indices of legs that are one rope over a sheave; a leg is in one group at most.
  std::vector<std::vector<std::size_t>> equalised;
  std::vector<loads::AppliedLoad> loads;
  // What is up when the legs come tight, in piece axes, of any length: as cast, unless the caller says
  // otherwise (the mean outward normal of the inserts picked by, for a piece that was turned). The search
  // starts from there, and a piece that would end more than a right angle away has rolled over: not assessed.
  Direction upright{0.0, 0.0, 1.0};
  std::vector<Carrier> carriers{};
};

// More than one hook, or something between the hook and the piece.
bool is_tree(const HungPiece& piece);

struct LegForce {
  Force tension{};
  Angle angle_from_horizontal{};
  ForceVector on_insert;  // what the leg does to its lower end, in piece axes
};

struct CarrierPose {
  Position origin;               // of its axes, in piece axes
  std::array<Direction, 3> axes;  // its x, y, z in piece axes
  Angle tilt{};                  // between its z axis and the vertical; zero of a sheave
};

struct Hanging {
  Position hook;  // the first one, in piece axes
  Direction up;   // the vertical, in piece axes
  Angle tilt{};   // between what was to be up (HungPiece::upright) and the vertical
  std::vector<LegForce> legs;
  std::vector<std::array<Position, 2>> spans{};  // of each leg: upper and lower end, in piece axes
  std::vector<CarrierPose> carriers{};
  double force_residual = 0.0;   // largest unbalanced force over the total load
  double moment_residual = 0.0;  // largest unbalanced moment over total load x size
  bool stable = false;           // Hessian positive but for free yaw
};

// Not assessed: no legs, a leg that cannot reach, loads not finite, no convergence, not stable, rolled over,
// forces that do not balance (to 1e-9 of the load).
Outcome<Hanging> hang(const HungPiece& piece);

// One admissible distribution of the load over the legs.
struct Sharing {
  std::string name;            // "all legs", "legs A1 and A3 only"
  std::vector<LegForce> legs;  // slack legs have zero tension
};

// Every basic distribution that equilibrium alone allows, in the geometry of `hanging`: sets of at most three
// ropes that carry everything, none pushing. No distribution of the load gives any leg more than the worst of
// these. For four equal legs on a rectangle these are the two diagonals (two legs carry all). Of a tree:
// tree_distributions.cpp.
// Not assessed: a leg that does not pull upwards; more ways than can be listed.
Outcome<std::vector<Sharing>> basic_distributions(const HungPiece& piece, const Hanging& hanging);

}  // namespace firstpick::demands
