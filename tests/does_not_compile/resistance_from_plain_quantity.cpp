// A force becomes a resistance only where somebody writes that it is one.
#include "record/outcome.hpp"
#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const Resistance<Force> pullout{20.0 * kN};
#else
const Resistance<Force> pullout = 20.0 * kN;
#endif
