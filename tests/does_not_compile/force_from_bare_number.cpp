// A bare number has no unit and so is no force.
#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const Force pull = 20.0 * kN;
#else
const Force pull = 20.0;
#endif
