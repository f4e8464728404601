// A unit as people write it: "ft", "lb/ft3", "lb/ft^3", "kip ft", "lbf / (psi^0.5 in^1.5)", "short ton".
#pragma once

#include <optional>

#include "units/scanner.hpp"
#include "units/unit_list.hpp"

namespace firstpick {

struct WrittenUnit {
  double above = 1.0, below = 1.0;  // one of the unit is above / below, in SI base units
  Dimension dimension;
  const NamedUnit* single = nullptr;  // set when it is one name without a power
  std::size_t from = 0, to = 0;
};

// Reads as far as the unit goes; what follows is the caller's. `needed` only serves the help.
Read<WrittenUnit> read_unit(Scanner& text, Dimension needed);

// One of the unit as a quantity of the dimension that is needed, in SI. A mass is taken for its weight under
// standard gravity where a force, a stress, a moment or a stiffness is needed, a weight density for a
// density. Nothing when the dimension does not fit.
std::optional<double> one_in_si(const WrittenUnit& unit, Dimension needed);

}  // namespace firstpick
