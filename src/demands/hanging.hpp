// The piece as it hangs: a rigid body on legs that only pull, one hook.
//
// Formulation: minimise sum over ropes of EA/(2 L0) <L - L0>^2 minus the work of the loads over the poses of
// the piece (6 unknowns, free yaw), the loads dead and straight down. A rope runs over one or more spans from
// the hook to inserts (a sheave at the hook joins the spans of an equalised group into one rope); beams and
// further sheaves will be more bodies and spans in the same sum (rope_equilibrium.hpp).
// E A may be infinite: a leg that does not stretch. It is then solved as a constraint on the length, not as a
// very stiff spring, so that closed forms of statics hold to rounding. Where such legs leave the sharing open
// (four legs on a rigid piece) they share as legs of equal E A would; basic_distributions() tells what else
// equilibrium allows.
// Limits: at most 16 legs; no mass of the legs; no contact of legs with the concrete.
#pragma once

#include <string>
#include <vector>

#include "loads/applied_load.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

struct HungLeg {
  std::string to;           // insert
  Position at;              // in piece axes
  Length length{};          // unstretched
  Force axial_stiffness{};  // E A; infinite: does not stretch
};

struct HungPiece {
  std::vector<HungLeg> legs;
  // Indices of legs that are one rope over a sheave at the hook; a leg is in one group at most.
  std::vector<std::vector<std::size_t>> equalised;
  std::vector<loads::AppliedLoad> loads;
  // What is up when the legs come tight, in piece axes, of any length: as cast, unless the caller says
  // otherwise (the mean outward normal of the inserts picked by, for a piece that was turned). The search
  // starts from there, and a piece that would end more than a right angle away has rolled over: not assessed.
  Direction upright{0.0, 0.0, 1.0};
};

struct LegForce {
  Force tension{};
  Angle angle_from_horizontal{};
  ForceVector on_insert;  // what the leg does to the insert, in piece axes
};

struct Hanging {
  Position hook;  // in piece axes
  Direction up;   // the vertical, in piece axes
  Angle tilt{};   // between what was to be up (HungPiece::upright) and the vertical
  std::vector<LegForce> legs;
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
// these. For four equal legs on a rectangle these are the two diagonals (two legs carry all).
// Not assessed: a leg that does not pull upwards.
Outcome<std::vector<Sharing>> basic_distributions(const HungPiece& piece, const Hanging& hanging);

}  // namespace firstpick::demands
