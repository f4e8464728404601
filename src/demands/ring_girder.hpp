// A ring of one rectangular section that lies level, under its weight and forces at points: bending and torsion all round.
//
// Across its plane, M sagging positive, from a cut at angle 0:
//
//   dV/da = -w R + P_i        dM/da = T + V R + C_i        dT/da = -M + t_i
//
// In its plane (m closing the ring more, tension inside, positive):
//
//   N, Q, m by equilibrium from the cut: forces along x and y at the middle line
//
// The three unknowns of each at the cut make its energy least: across the plane that of bending and torsion, in it that of
// bending. The weight is even; where the forces do not balance it quite, it is made heavier towards one side, by 2 % at most.
//
// Source   statics and Castigliano's theorem; for even picks the closed form of Hassoun, "Structural Concrete", table 21.1.
//          Torsion of a rectangle: Saint-Venant's series.
// Range    thin rings. Shear deformation is left out.
#pragma once

#include <vector>

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/quantity.hpp"

namespace firstpick::demands {

struct RingForce {
  Angle at{};                    // round the axis of the ring, from x
  Force up{};
  Force inward{}, around{};      // towards the axis; towards larger angles
  Length above_middle{};         // where the level parts act, over mid-depth
  Length outside_middle{};       // where `up` acts, beyond the middle line
};

struct Ring {
  Length radius{};               // of the middle line
  Length wall{}, depth{};
  Length depth_counted{};        // in bending and torsion
  double poisson = 0.0;
  std::vector<RingForce> forces;  // picks
};

struct RingSection {
  Angle at{};
  Moment bending{}, torsion{};   // across the plane
  Moment level_bending{};        // in the plane: tension inside positive
  Force axial{};                 // tension positive
  Force shear{};
  Stress tension{};              // largest principal: both bendings at a corner, axial force, all shear
};

struct RingState {
  std::vector<RingSection> sections;  // all round, two at each force
  const RingSection& most_tension() const;
};

// Not assessed: no forces, numbers that are not usable, forces that 2 % of the weight cannot balance.
Outcome<RingState> ring_state(const Ring& ring);

// Largest shear stress of a rectangle under torsion, over T/(long x short^2): 1/alpha.
double torsion_shear(double long_side, double short_side);
// Second moment of torsion over long x short^3.
double torsion_stiffness(double long_side, double short_side);

}  // namespace firstpick::demands
