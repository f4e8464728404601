// A force is not compared with a stress.
#include "checks/compare.hpp"

using namespace firstpick;

const Outcome<Demand<Force>> pull = Demand<Force>{20.0 * kN};
const Outcome<Resistance<Force>> pullout = Resistance<Force>{30.0 * kN};
const Outcome<Resistance<Stress>> cracking = Resistance<Stress>{3.0 * MPa};

#ifdef FIRSTPICK_CONTROL
const checks::Comparison comparison = checks::compare(pull, pullout);
#else
const checks::Comparison comparison = checks::compare(pull, cracking);
#endif
