#include "units/decimal_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace firstpick {
namespace {

constexpr int all_figures = 17;    // identify a double
constexpr int exact_figures = 15;  // a whole number of this many figures is exact in a double
const char* const not_a_number = "not a number";

// size = digits[0].digits[1..] x 10^exponent, to the figures of a double.
struct Split {
  double mantissa;  // 1 to 10
  int exponent;
};
Split split(double size) {
  std::array<char, 32> text{};  // "1.2345678901234567e-300" is 24 characters at most
  const char* const end = std::to_chars(text.data(), text.data() + text.size(), size,
                                        std::chars_format::scientific, all_figures - 1)
                              .ptr;
  const char* const e = std::find(static_cast<const char*>(text.data()), end, 'e');
  Split result{};
  std::from_chars(text.data(), e, result.mantissa);
  const char* exponent = e + 1;
  if (*exponent == '+') ++exponent;  // from_chars takes no plus sign
  std::from_chars(exponent, end, result.exponent);
  return result;
}

struct Digits {
  std::string digits;
  int exponent;  // of the first digit
};
Digits rounded_digits(double size, Split s, int figures, Rounding rounding) {
  if (figures > exact_figures) {  // nothing left to round against
    std::string text = fmt::format("{:.{}e}", size, figures - 1);
    text.erase(text.find('e'));
    std::erase(text, '.');
    return {text, s.exponent};
  }
  const double limit = std::pow(10.0, figures);
  double count = rounded_count(s.mantissa * (limit / 10.0), rounding);
  if (count >= limit) {  // 9.996 -> 10.0
    count /= 10.0;
    ++s.exponent;
  }
  return {fmt::format("{}", static_cast<long long>(count)),
          s.exponent};  // whole, and no more than 15 figures
}

std::string zeros(int count) { return std::string(static_cast<std::size_t>(count), '0'); }

std::string laid_out(const Digits& d) {
  const int figures = static_cast<int>(d.digits.size());
  if (d.exponent < -6 || d.exponent >= exact_figures) {
    const std::string fraction = figures > 1 ? "." + d.digits.substr(1) : "";
    return fmt::format("{}{}e{}", d.digits.front(), fraction, d.exponent);
  }
  if (d.exponent < 0) return "0." + zeros(-d.exponent - 1) + d.digits;
  const int before = d.exponent + 1;  // digits before the point
  if (before >= figures) return d.digits + zeros(before - figures);
  const auto before_point = static_cast<std::size_t>(before);
  return d.digits.substr(0, before_point) + "." + d.digits.substr(before_point);
}

}  // namespace

double rounded_count(double size, Rounding rounding) {
  const double noise = std::min(1e-9 * size, 1e-3);
  if (rounding == Rounding::nearest) return std::floor(size + 0.5 + noise);  // 19.049999999999997 is 19.05
  const double below = std::floor(size);
  const double above = std::ceil(size);
  if (rounding == Rounding::up) return size - below <= noise ? below : above;
  return above - size <= noise ? above : below;
}

std::string significant_figures(double number, int figures, Rounding rounding) {
  if (!std::isfinite(number)) return not_a_number;
  if (number == 0.0) return "0";
  const int used = std::clamp(figures, 1, all_figures);
  const double size = std::abs(number);
  return (number < 0.0 ? "-" : "") + laid_out(rounded_digits(size, split(size), used, rounding));
}

std::string figures_or_whole(double number, int figures, Rounding rounding) {
  if (!std::isfinite(number) || number == 0.0) return significant_figures(number, figures, rounding);
  const double size = std::abs(number);
  const Split s = split(size);
  const int whole_figures = std::min(s.exponent + 1, exact_figures);
  const int used = std::clamp(std::max(figures, whole_figures), 1, all_figures);
  return (number < 0.0 ? "-" : "") + laid_out(rounded_digits(size, s, used, rounding));
}

std::string fixed_decimals(double number, int decimals, Rounding rounding) {
  if (!std::isfinite(number)) return not_a_number;
  const double scaled = std::abs(number) * std::pow(10.0, decimals);
  if (!(scaled < 1e15)) return significant_figures(number, exact_figures, rounding);
  const double count = rounded_count(scaled, rounding);
  std::string text = fmt::format("{}", static_cast<long long>(count));
  if (decimals > 0) {
    const auto places = static_cast<std::size_t>(decimals);
    if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
    text.insert(text.size() - places, ".");
  }
  return (number < 0.0 && count > 0.0 ? "-" : "") + text;
}

std::string without_trailing_zeros(std::string text) {
  if (text.find('.') == std::string::npos || text.find('e') != std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string print_number(double number, int figures, Rounding rounding) {
  return significant_figures(number, figures, rounding);
}

std::string print_utilization(double utilization) {
  constexpr double largest_with_decimals = 1e6;
  if (!(utilization < largest_with_decimals)) return print_number(utilization, 3, Rounding::up);
  if (utilization <= 1.0 || utilization >= 1.01) return fixed_decimals(utilization, 2, Rounding::up);

  // "1.00" would hide the failure and "1.01" would exaggerate it: decimals as far as the first figure of the
  // excess.
  const double excess = utilization - 1.0;  // exact: the two are within a factor of two
  const int decimals = std::min(-split(excess).exponent, exact_figures + 1);
  const double scaled = excess * std::pow(10.0, decimals);
  const double representable = 2.3e-16 * std::pow(10.0, decimals);  // half a step of the utilization itself
  const double below = std::max(std::floor(scaled), 1.0);
  const double shown = scaled - below <= 1e-9 * scaled + representable ? below : std::ceil(scaled);
  return fmt::format("1.{:0{}.0f}", shown, decimals);
}

}  // namespace firstpick
