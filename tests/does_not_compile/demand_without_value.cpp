// A demand that was never computed cannot silently be zero.
#include "record/outcome.hpp"
#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const Demand<Force> pull{0.0 * kN};
#else
const Demand<Force> pull{};
#endif
