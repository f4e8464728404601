// A length and a force have no sum.
#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const Force total = 1.0 * kN + 2.0 * kip;
#else
const Force total = 1.0 * kN + 2.0 * m;
#endif
