// A demand is not a resistance, though both are forces.
#include "record/outcome.hpp"
#include "units/quantity.hpp"

using namespace firstpick;

const Demand<Force> pull{20.0 * kN};

#ifdef FIRSTPICK_CONTROL
const Resistance<Force> pullout{20.0 * kN};
#else
const Resistance<Force> pullout = pull;
#endif
