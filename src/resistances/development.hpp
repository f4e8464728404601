#pragma once

#include "record/trace.hpp"
#include "tables/anchor_bars.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

struct DevelopedBar {
  Length diameter;
  Stress f_y;      // that is to be developed
  Stress f_c;      // at the lift
  Ratio lambda_a;  // lightweight concrete
  bool upright;    // as cast: no fresh concrete settles below it
};

// ACI 318-19 25.4.2.3: length of a straight end for f_y, at any cover and spacing. Not a usable number where an input is not.
Length straight_length(const DevelopedBar& bar, const tables::AciDevelopment& model, Trace& trace);
// 25.4.3.1: length of a standard hook for f_y, to the outside of its bend; nothing of it is credited to ties or side cover.
Length hooked_length(const DevelopedBar& bar, const tables::AciDevelopment& model, Trace& trace);

}  // namespace firstpick::resistances
