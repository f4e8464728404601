#include "sheet/own_units.hpp"

#include <cmath>

namespace firstpick::sheet {

std::string in_own_units(const Term& term, UnitSystem units) {
  const double number = term.number;
  if (!std::isfinite(number) || number == 0.0) return {};
  const std::string& unit = term.unit;
  if (units == UnitSystem::si) {
    if (unit == "lb") return print(number * lbf, units);
    if (unit == "kip") return print(number * kip, units);
    if (unit == "psi") return print(number * psi, units);
    if (unit == "in") return print(number * inch, units);
    if (unit == "in2") return print(number * in2, units);
    return {};
  }
  if (unit == "N") return print(0.001 * number * kN, units);
  if (unit == "kN") return print(number * kN, units);
  if (unit == "MPa") return print(number * MPa, units);
  if (unit == "mm") return print(number * mm, units);
  if (unit == "mm2") return print(number * mm2, units);
  return {};
}

}  // namespace firstpick::sheet
