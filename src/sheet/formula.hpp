// A formula of a step as a tree, to be written as MathML or with its numbers put in.
//
//   + - * / ^   parentheses   minus in front   sqrt ln min max sin cos tan abs   pi   numbers   symbols   (record/trace.hpp)
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record/trace.hpp"

namespace firstpick::sheet {

struct Formula {
  enum class Kind { number, symbol, function, negative, sum, difference, product, quotient, power };
  Kind kind = Kind::number;
  std::string text{};  // of a number, a symbol, the name of a function
  std::vector<Formula> parts{};
};

// Nothing where the text is no formula: it is then printed as it stands.
std::optional<Formula> formula_of(std::string_view text);

// Of a step; empty where it has none, or one number alone, which is its result.
std::optional<Formula> formula_of(const Step& step);

// A number to six figures, as it stands in every line of the sheet.
std::string figures(double number);

// The same formula with each symbol's number in its place; a symbol without one stays.
Formula with_numbers(const Formula& formula, const std::vector<Term>& given);

std::string as_text(const Formula& formula);    // "24 * 1 * sqrt(3820.8) * 5.5^1.5"
std::string as_mathml(const Formula& formula);  // inside <math>, ASCII, entities as numbers
std::string symbol_as_mathml(std::string_view symbol);

}  // namespace firstpick::sheet
