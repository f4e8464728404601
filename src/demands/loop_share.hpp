// What the more loaded of the two legs of a loop carries.
//
//   T = F sin(delta + alpha) / sin(2 delta)   alpha < delta: the pull lies between the legs
//   T = F                                     alpha >= delta, or the opening of the loop is not known
//
// delta: half the opening between the legs where they meet above the concrete; alpha: the lean of the pull from the axis of
// the loop, taken in the plane of the loop, where it loads one leg most. Source: statics of two legs at a knot.
#pragma once

#include <optional>

#include "units/quantity.hpp"

namespace firstpick::demands {

// Not a number where an angle is none, or the opening is not between 0 and 180 degrees.
Ratio loaded_leg_share(Angle lean, std::optional<Angle> opening);

}  // namespace firstpick::demands
