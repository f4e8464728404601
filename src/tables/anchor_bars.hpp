// Bars that hold the body of concrete which would break out with a headed insert, and their development on both sides of
// the surface along which it breaks.
#pragma once

#include <optional>

#include "record/source.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

// ACI 318-19 25.4.2 and 25.4.3.
struct AciDevelopment {
  Sourced<Length> thin_up_to;                   // No. 6
  Sourced<RootStress> straight_thin, straight_thick;  // l_d = psi_t f_y d_b / (k lambda sqrt(f_c)): 50/3, 40/3 in psi^0.5
  Sourced<Ratio> cast_position;                 // 1.3: psi_t of bars that may lie level as cast
  Sourced<Length> straight_least;               // 12 in
  Sourced<BreakoutCoefficient> hook;            // l_dh = psi_h psi_c f_y d_b^1.5 / (55 lambda sqrt(f_c)), in and psi
  Sourced<Ratio> hook_factor;                   // psi_h = psi_r psi_o
  Sourced<Ratio> hook_base;                     // psi_c = 0.6 + f_c / 15000 psi <= 1
  Sourced<Stress> hook_over;
  Sourced<Ratio> hook_diameters;                // l_dh is at least 8 d_b
  Sourced<Length> hook_least;                   // and 6 in
};

// EN 1992-4 7.2.1.9 with the bond of EN 1992-1-1 8.4.2.
struct EnAnchorage {
  Sourced<Ratio> bond;               // f_bk = k_b f_ck^(2/3), in MPa
  Sourced<Length> thickest;          // d_b is at most 16 mm
  Sourced<Ratio> straight_diameters, hook_diameters;  // in the body of concrete at least 10 d_b or 4 d_b
  Sourced<Length> beyond_least;      // beyond it at least 100 mm
  Sourced<Ratio> pryout;             // 0.75: on the pry-out of an insert with such bars
  Sourced<Ratio> interaction_power;  // 2/3 where bars hold the tension alone
};

struct AnchorBarModel {
  Sourced<Ratio> distance;      // of the farthest bar, over h_ef
  Sourced<Stress> yield_most;   // more is not credited
  std::optional<AciDevelopment> aci{};
  std::optional<EnAnchorage> en{};  // one of the two
};

}  // namespace firstpick::tables
