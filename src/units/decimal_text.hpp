// Decimal digits of a number, rounded on purpose. Kernel of print.hpp; everything else prints through that.
#pragma once

#include <string>

#include "units/print.hpp"

namespace firstpick {

// How many whole steps there are in `size` (not negative, below 1e15), rounded as asked. A size within a
// relative 1e-9 (and a thousandth of a step) of a whole number is that number.
double rounded_count(double size, Rounding rounding);

// "not a number" for everything not finite.
std::string significant_figures(double number, int figures, Rounding rounding);  // exactly `figures`, 1 to 17
std::string figures_or_whole(double number, int figures, Rounding rounding);     // but 9876, not 9880
std::string fixed_decimals(double number, int decimals, Rounding rounding);

// "12.50" -> "12.5", "12.0" -> "12"
std::string without_trailing_zeros(std::string text);

}  // namespace firstpick
