// A round wall under pulls across and round it: a ring of its band, each pull held in balance by shear round the wall.
//
//   M = R/(2 pi) sum of [ P (1 + cos(a)/2 - (pi - a) sin(a)) - S (3/2 sin(a) - (pi - a)(1 - cos(a))) ]
//   N = 1/(2 pi) sum of [ P (3/2 cos(a) + (pi - a) sin(a))   + |S (sin(a)/2 - (pi - a) cos(a))| ]
//
//   P outward, S round the wall towards larger angles; a from the pull to the section, 0 to 2 pi; M > 0: tension inside
//
// What the shear of one pull takes away that of the others gives back where they are in balance; what is left the rest of the
// wall and the slab at its end take. Stress: curved beam, the larger of both faces, and N.
//
// Source   supported rings: Roark's Formulas for Stress and Strain, table of circular rings, a ring held by tangential shear
//          (largest moment 3 P R/(4 pi)), from memory; two pulls P R/pi, three 0.189 P R.
// Range    the band is a beam: its height is the caller's.
#pragma once

#include <vector>

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/quantity.hpp"

namespace firstpick::demands {

struct RoundPull {
  Angle at{};
  Force outward{}, around{};
};

struct RoundBand {
  Length inside{}, outside{}, height{};
  std::vector<RoundPull> pulls;
};

struct RoundState {
  Angle at{};        // of the largest tension
  Moment moment{};
  Force axial{};     // tension positive
  Stress tension{};
};

// Not assessed: a number that is not usable.
Outcome<RoundState> round_state(const RoundBand& band);

}  // namespace firstpick::demands
