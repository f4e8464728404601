// The value of a formula as a step of the calculation prints it: an evaluator of its own, that knows nothing of the code
// which printed it.
//
//   + - * / ^   parentheses   unary minus   sqrt min max sin cos tan abs   pi   numbers   symbols
//
// ^ binds tightest and to the right, and before a minus in front: -2^2 = -4. Symbols: letters, digits, _ and '.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace firstpick::tests {

using Symbols = std::map<std::string, double, std::less<>>;

// Throws std::invalid_argument, with the place, where the text is no formula or a symbol has no number.
double value_of(std::string_view formula, const Symbols& symbols);

// The symbols of the formula, each once, without functions and pi.
std::vector<std::string> symbols_of(std::string_view formula);

}  // namespace firstpick::tests
