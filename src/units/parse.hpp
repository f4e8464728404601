// The one parser of quantities: "8 ft 4 in", "2.1 m", "2500 psi", "19.2 kip", "14 h 30 min", "3 %".
//
//   quantity   [sign] number unit { number unit }      several only in falling steps: ft in; d h min s
//   number     4  0.75  1.5e3  5/8  1 1/2  1-1/2       a comma is refused: 2,100 is 2.1 in half the world
//   unit       factor { factor } [ / factor | / ( factor { factor } ) ]
//   factor     name, or name and power: ft3 ft^3 psi^0.5 in^(5/3); names are listed in units/unit_list.cpp
//
// No locale, no exceptions. The result is always finite; signs and limits are the caller's to check.
// A number times a unit is the same double here, in a table entry and in C++ (`6.0 * inch`), so that a plan
// value at the limit of a table is at the limit.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

#include "units/dimension.hpp"
#include "units/quantity.hpp"

namespace firstpick {

// A fault in the text of a quantity. `at` is the 0-based byte offset in the text, at most its size.
struct QuantityFault {
  std::size_t at = 0;
  std::string what;  // what is wrong
  std::string help;  // what to write instead
};

// Numbers in SI base units for a dimension; the templates below put the type around them.
std::variant<double, QuantityFault> parse_in_si(std::string_view text, Dimension needed);
std::optional<double> number_in_si(double number, std::string_view unit, Dimension needed);
std::optional<double> unit_in_si(std::string_view unit, Dimension needed);

// Reads a quantity of kind Q. A Ratio may be a bare number ("0.03"); everything else needs its unit.
// A Force may be given in units of mass: the weight of that mass under standard gravity.
// A Density may be given as a weight density ("24 kN/m3"): divided by standard gravity.
template <class Q>
std::variant<Q, QuantityFault> parse(std::string_view text) {
  static_assert(!std::is_same_v<Q, bu::quantity<bu::si::temperature>>,
                "no difference of temperatures: 5 degC");
  std::variant<double, QuantityFault> read = parse_in_si(text, dimension_of<Q>());
  if (auto* fault = std::get_if<QuantityFault>(&read)) return std::move(*fault);
  return Q::from_value(std::get<double>(read));
}

// `number` of `unit`, for table entries `value = 24, unit = "lbf / (psi^0.5 in^1.5)"`. Knows the scales of
// temperature too: (-10, "degC"). Nothing when the unit is unknown, of another dimension, or the result not
// finite.
template <class Q>
std::optional<Q> quantity_in(double number, std::string_view unit) {
  static_assert(!std::is_same_v<Q, bu::quantity<bu::si::temperature>>,
                "no difference of temperatures: 5 degC");
  const std::optional<double> si = number_in_si(number, unit, dimension_of<Q>());
  if (!si) return {};
  return Q::from_value(*si);
}

// One of that unit. "1" is the unit of a Ratio. Not for temperatures: one degree C is not a unit of a
// temperature on a scale, so that a table entry in degC cannot be multiplied by mistake (use quantity_in).
template <class Q>
std::optional<Q> unit_named(std::string_view unit) {
  static_assert(!std::is_same_v<Q, Temperature>,
                "a temperature is not a multiple of its unit: use quantity_in");
  const std::optional<double> si = unit_in_si(unit, dimension_of<Q>());
  if (!si) return {};
  return Q::from_value(*si);
}

}  // namespace firstpick
