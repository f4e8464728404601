// A long piece as a line: moment, shear, axial force and fibre stress anywhere along it, exactly.
//
// The line is a row of steps, each with one section and one load per length, and forces at points: picks, ends of
// the piece on the ground, parts that hang on it. A force has a part along the line and acts at a height, so the
// thrust of inclined legs brings its axial force and, by its distance from the centroid, its moment.
//
//   N(x) = -sum of H_i + N_p
//   V(x) =  sum of R_i - integral of w
//   M(x) =  sum of R_i (x - x_i) + sum of H_i (z_i - z_c(x)) - integral of w (x - s) ds + N_p (z_c - z_p)
//   stress = N/A + M (z_c - z)/I                     forces left of x; M > 0 and stress > 0: tension below
//   shear stress = |V|/A_v                           A_v = I b / Q at its least
//
// Source   statics of a straight beam, plane sections; no outside constant.
// Range    straight pieces in one vertical plane, uncracked, level. Torsion and bending sideways are not in it.
#pragma once

#include <optional>
#include <vector>

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"

namespace firstpick::demands {

// Steel that presses the section from the moment it is released.
struct Prestress {
  Force force{};     // total, after the losses at the time of the lift; compression of the concrete
  Length height{};   // of its resultant
};

struct BeamStep {
  Length from{}, to{};
  Area area{};
  SecondMoment second_moment{};            // about the level axis through the centroid
  Length bottom{}, centroid{}, top{};      // heights of the lowest fibre, the centroid, the highest fibre
  LineLoad load{};                         // down
  std::optional<Prestress> prestress{};
  Area shear_area{};                       // shear over it is the largest shear stress; not positive: not known
};

struct BeamForce {
  Length at{};       // along the line
  Length height{};   // where it acts
  Force along{};     // towards larger x
  Force up{};
};

struct BeamLine {
  std::vector<BeamStep> steps;    // without gaps, from one end to the other
  std::vector<BeamForce> forces;
};

// What one section carries. Two of them stand at a place where a force acts or the section changes: just before, and
// just behind.
struct BeamSection {
  Length at{};
  std::size_t step = 0;
  Force axial{};                     // tension positive, with the prestress
  Force shear{};                     // of what lies left, up positive
  Moment moment{};                   // sagging positive, with the prestress
  Stress top_stress{}, bottom_stress{};  // tension positive
  Stress shear_stress{};             // largest of the section, without sign; not a number where the shear area is not known
};

struct BeamState {
  std::vector<BeamSection> sections;  // from left to right: every place where a moment or a stress can be extreme
  const BeamSection& most_sagging() const;
  const BeamSection& most_hogging() const;
  const BeamSection& most_top_tension() const;
  const BeamSection& most_bottom_tension() const;
};

// Not assessed: no steps, a gap or an overlap, a section without area or stiffness, a number that is not finite, a
// force beyond the ends, forces that do not balance to 1e-6 of the load (and of load x length).
Outcome<BeamState> beam_state(const BeamLine& beam);

// What rigid, level supports at these places take of the loads and forces of `beam` (up positive; negative: the beam
// lifts off there). Two supports by statics, more by the stiffness of the line, one modulus of elasticity.
//
//   sum over k of f_jk X_k = -d_j0,   f_jk = integral of m_j m_k / I,   d_j0 = integral of M_0 m_j / I
//
// Source   method of forces: the beam on its outer supports, the inner reactions X as unknowns; integrals by Simpson's
//          rule, exact for these polynomials.
// Not assessed: fewer than two supports, two at one place, more than 16, any reason of beam_state but the balance.
Outcome<std::vector<Force>> support_reactions(const BeamLine& beam, const std::vector<Length>& supports);

}  // namespace firstpick::demands
