// The resistance divided by the demand would pass exactly what must fail.
#include "checks/compare.hpp"

using namespace firstpick;

const Outcome<Demand<Force>> pull = Demand<Force>{20.0 * kN};
const Outcome<Resistance<Force>> pullout = Resistance<Force>{30.0 * kN};

#ifdef FIRSTPICK_CONTROL
const checks::Comparison comparison = checks::compare(pull, pullout);
#else
const checks::Comparison comparison = checks::compare(pullout, pull);
#endif
