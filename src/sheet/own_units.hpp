// A number of the calculation in the units of the plan, for who reads a formula in another system of units.
#pragma once

#include <string>

#include "record/trace.hpp"
#include "units/print.hpp"

namespace firstpick::sheet {

// "80.0 kN" of 17984.7 lb in a plan in SI units; empty where the number stands in the plan's own units already, or has
// none.
std::string in_own_units(const Term& term, UnitSystem units);

}  // namespace firstpick::sheet
