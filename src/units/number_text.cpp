#include "units/number_text.hpp"

#include <charconv>
#include <cmath>
#include <system_error>

#include <fmt/format.h>

#include "units/spelling.hpp"

namespace firstpick {
namespace {

// The value of digits that were already found to have the form of a decimal number.
Read<double> value_of(std::string_view written, std::size_t at) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(written.data(), written.data() + written.size(), value);
  const bool usable = value == 0.0 || std::isnormal(value);
  if (error != std::errc{} || end != written.data() + written.size() || !usable)
    return QuantityFault{at, fmt::format("the number {} is too large or too small", quoted(written)), {}};
  return value;
}

QuantityFault no_number(const Scanner& text) {
  Scanner look = text;
  const std::string_view word = look.letters();
  for (const char* not_finite : {"inf", "infinity", "nan"})
    if (same_but_for_case(word, not_finite))
      return {text.at(), fmt::format("{} is not a number that can be used", quoted(word)), {}};
  if (!word.empty())
    return {text.at(), fmt::format("a number expected, not {}", quoted(word)),
            "the number comes before its unit"};
  if (text.ahead() == '-' || text.ahead() == '+') return {text.at(), "a number expected after the sign", {}};
  return text.unexpected("a number");
}

// Takes "4", "0.75", ".75", "1.5e3"; nothing else about the number is known yet.
void take_decimal(Scanner& text) {
  text.digits();
  if (text.take('.')) text.digits();
  const bool power = text.ahead() == 'e' || text.ahead() == 'E';
  const bool sign = text.ahead(1) == '-' || text.ahead(1) == '+';
  if (power && is_digit(text.ahead(sign ? 2 : 1))) {
    text.step(sign ? 2 : 1);
    text.digits();
  }
}

bool decimal_starts(const Scanner& text) {
  return is_digit(text.ahead()) || (text.ahead() == '.' && is_digit(text.ahead(1)));
}

// "5/8" with the scanner on the 5. `proper`: part of a mixed number, so below one.
Read<double> read_fraction(Scanner& text, bool proper) {
  const std::size_t from = text.at();
  const Read<double> above = value_of(text.digits(), from);
  text.step();  // the caller has seen the '/'
  const std::size_t below_from = text.at();
  const Read<double> below = value_of(text.digits(), below_from);
  for (const auto* part : {&above, &below})
    if (auto* fault = std::get_if<QuantityFault>(part)) return *fault;
  const double numerator = std::get<double>(above);
  const double denominator = std::get<double>(below);
  if (denominator == 0.0) return QuantityFault{below_from, "a fraction with a denominator of zero", {}};
  if (proper && numerator >= denominator)
    return QuantityFault{from,
                         fmt::format("{} after a whole number is one or more", quoted(text.since(from))),
                         "write a mixed number with a fraction below one, as in \"4 1/2 in\""};
  return numerator / denominator;
}

bool fraction_starts(Scanner text) {
  return !text.digits().empty() && text.take('/') && is_digit(text.ahead());
}

// After the whole part of "4 1/2" or "4-1/2": goes to the fraction if there is one, else stays.
bool go_to_fraction(Scanner& text) {
  Scanner look = text;
  if (!look.take('-') && !look.skip_spaces()) return false;
  if (!fraction_starts(look)) return false;
  text = look;
  return true;
}

}  // namespace

Read<WrittenNumber> read_number(Scanner& text) {
  if (!decimal_starts(text)) return no_number(text);

  WrittenNumber number;
  number.from = text.at();
  Read<double> value{0.0};
  if (fraction_starts(text)) {
    value = read_fraction(text, false);
  } else {
    take_decimal(text);
    const std::string_view written = text.since(number.from);
    number.whole = written.find_first_not_of("0123456789") == std::string_view::npos;
    value = value_of(written, number.from);
    if (auto* whole = std::get_if<double>(&value); whole && number.whole && go_to_fraction(text)) {
      const Read<double> fraction = read_fraction(text, true);
      if (auto* fault = std::get_if<QuantityFault>(&fraction)) return *fault;
      *whole += std::get<double>(fraction);
      number.whole = false;
    }
  }
  if (auto* fault = std::get_if<QuantityFault>(&value)) return *fault;
  number.value = std::get<double>(value);
  number.to = text.at();
  if (text.since(number.from) == "0" && (text.ahead() == 'x' || text.ahead() == 'X'))
    return QuantityFault{text.at(), "hexadecimal numbers are not read", "write the number in decimal digits"};
  return number;
}

}  // namespace firstpick
