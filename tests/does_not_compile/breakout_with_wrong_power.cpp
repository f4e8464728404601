// k_c sqrt(f_c) h_ef^1.5 is a force; with h_ef to the first power it is not, and no reader need notice that.
#include "units/quantity.hpp"

using namespace firstpick;

const BreakoutCoefficient k_c = BreakoutCoefficient::from_value(1.0);
const Stress f_c = 20.0 * MPa;
const Length h_ef = 100.0 * mm;

#ifdef FIRSTPICK_CONTROL
const Force breakout = k_c * root(f_c) * power<3, 2>(h_ef);
#else
const Force breakout = k_c * root(f_c) * h_ef;
#endif
