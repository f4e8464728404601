// The number of metres in a force is no question.
#include "units/quantity.hpp"

using namespace firstpick;

#ifdef FIRSTPICK_CONTROL
const double pull_kN = in(kN, 20.0 * kN);
#else
const double pull_kN = in(m, 20.0 * kN);
#endif
