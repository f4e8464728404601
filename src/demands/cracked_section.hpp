// A rectangular section that has cracked: stresses of its bars and of its concrete by the transformed
// section.
//
// Strains are plane, concrete takes no tension, bars are counted n = E_s/E_c times; of bars in the pressed
// part, n - 1 times, because they stand where concrete is counted. d from the pressed face, x the pressed
// depth, k the slope of the stress of the concrete over the depth:
//
//   -N = k (b x^2/2 - sum n A (d - x))
//    M = k (b x^2/2 (h/2 - x/3) + sum n A (d - x)(d - h/2))         about the middle of the depth
//   f_s = n k (d - x), f_c = k x
//
// x by the ratio of the two. Without N it is the root of b x^2/2 = sum n A (d - x).
//
// Source   elastic analysis of cracked sections, any textbook of reinforced concrete; no outside constant.
// Range    x up to h: a section that the thrust keeps pressed all over is taken whole, without its bars.
#pragma once

#include <vector>

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"

namespace firstpick::demands {

struct BarLayer {
  Area area{};
  Length height{};
};

struct CrackedSection {
  Length width{};
  Length bottom{}, top{};
  std::vector<BarLayer> layers;
  Ratio modular_ratio{};  // n, at least 1
};

struct CrackedStress {
  std::vector<Stress> bars;    // of each layer, tension positive
  Stress concrete{};           // largest compression, positive
  Length pressed{};            // x
  bool pressed_below = false;  // the pressed face is the lower one
  bool whole = false;          // pressed all over
};

// Axial force at the middle of the depth, tension positive; moment positive where it pulls below.
// Not assessed: numbers that are not usable, a layer outside the depth, no bar on the side that is pulled, a
// pull that opens the whole depth.
Outcome<CrackedStress> cracked_stress(const CrackedSection& section, Force axial, Moment moment);

// Width of cracks at the pulled face, over bars of this spacing.
//
//   w = 2 f_s/E_s beta sqrt(d_c^2 + (s/2)^2),   beta = (h - x)/(d - x)
//
// Source   Frosch, "Another look at cracking and crack control in reinforced concrete", ACI Structural
//          Journal 96 (1999) 437-442, from memory: the largest crack of a member, bars of the layer nearest
//          to the face.
Length crack_width(Stress bar, Stress modulus, Ratio beta, Length cover_to_middle, Length spacing);

}  // namespace firstpick::demands
