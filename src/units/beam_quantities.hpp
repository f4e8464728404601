// Quantities of beams and plates, beside those of quantity.hpp.
#pragma once

#include "units/quantity.hpp"

namespace firstpick {

using LineLoad = decltype(Force{} / Length{});    // load per length of a beam
using SecondMoment = decltype(Area{} * Area{});   // of an area, about an axis
using PlateMoment = decltype(Moment{} / Length{});  // bending moment per width of a panel

}  // namespace firstpick
