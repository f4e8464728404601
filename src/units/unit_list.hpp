// Every unit the program can read, every kind of quantity it can name.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "units/dimension.hpp"

namespace firstpick {

struct NamedUnit {
  enum class Use { combines, alone };  // alone: no powers and no products (%, degC)
  enum class Chain { none, feet, clock };

  std::string_view name;
  double si;  // one of this unit, in SI base units
  Dimension dimension;
  Use use = Use::combines;
  double absolute_zero = 0.0;  // a scale of temperature: its units from absolute zero to its own zero
  Chain chain = Chain::none;
  int parts = 0;  // its size in the smallest unit of the chain: ft 12, in 1
};

struct QuantityKind {
  Dimension dimension;
  std::string_view name;      // "a length"
  std::string_view examples;  // "\"6.0 m\" or \"8 ft 4 in\""
  std::string_view units;     // what a reader would look for first
};

// Nothing when there is no such unit. Case counts: mm is not Mm.
const NamedUnit* find_unit(std::string_view name);
std::span<const NamedUnit> all_units();

// Nothing for a dimension that has no name of its own.
const QuantityKind* find_kind(Dimension dimension);
std::span<const QuantityKind> all_kinds();

// What to write instead of a name that is not a unit: names the trade knows by another spelling, else the
// nearest under three edits, else the units of the quantity that is needed.
std::string help_for_unknown_unit(std::string_view name, Dimension needed);

}  // namespace firstpick
