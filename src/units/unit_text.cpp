#include "units/unit_text.hpp"

#include <charconv>
#include <cmath>

#include <fmt/format.h>

namespace firstpick {
namespace {

constexpr int one = 6;            // a power of one, in sixths
constexpr int largest_power = 6;  // no formula of the trade has more

struct Factor {
  const NamedUnit* unit;
  int sixths;
  std::size_t from;
};

Dimension scaled(const Dimension& d, int sixths) {
  return {d.length * sixths / one, d.mass * sixths / one, d.time * sixths / one, d.angle * sixths / one,
          d.temperature * sixths / one};
}

double raised(double si, int sixths) {
  if (sixths == 3) return std::sqrt(si);
  if (sixths % one != 0) return std::pow(si, sixths / static_cast<double>(one));
  double product = si;
  for (int n = one; n < std::abs(sixths); n += one) product *= si;
  return sixths > 0 ? product : 1.0 / product;
}

// A name: letters, "in." with its point, a foot or inch mark, %, or the two words of a ton.
std::string_view take_name(Scanner& text) {
  const std::size_t from = text.at();
  if (text.take('\'') || text.take('"') || text.take('%')) return text.since(from);
  const std::string_view word = text.letters();
  if (word == "in") text.take('.');
  if (word == "short" || word == "long") {
    Scanner look = text;
    look.skip_spaces();
    const std::string_view second = look.letters();
    if (text.ahead() == ' ' && (second == "ton" || second == "tons")) text = look;
  }
  return text.since(from);
}

QuantityFault bad_power(std::size_t at) {
  return {at, "a power expected here", "write a power as ft3, ft^3, psi^0.5 or in^(5/3)"};
}

// Digits after '^': "3", "0.5", "-1", "(5/3)". Sixths of one.
Read<int> read_written_power(Scanner& text) {
  const std::size_t from = text.at();
  const bool bracket = text.take('(');
  text.take('-');
  const std::size_t digits_from = text.at();
  text.digits();
  if (text.take('.')) text.digits();
  const std::string_view written = text.since(digits_from);
  double power = 0.0;
  const auto [end, error] = std::from_chars(written.data(), written.data() + written.size(), power);
  if (error != std::errc{} || end != written.data() + written.size()) return bad_power(from);
  if (bracket && text.take('/')) {
    const std::string_view below = text.digits();
    if (below != "2" && below != "3" && below != "6") return bad_power(from);
    power /= below.front() - '0';
  }
  if (bracket && !text.take(')')) return text.unexpected("')'");
  const double sixths = power * one;
  constexpr double noise = 1e-9;  // of the division by 3, in a number of at most 36
  if (!(sixths > 0.5 && sixths <= one * largest_power) || std::abs(sixths - std::round(sixths)) > noise)
    return QuantityFault{from, "a power of a unit must be a half, a third or a whole number up to 6",
                         "write a power as ft3, ft^3, psi^0.5 or in^(5/3)"};
  const bool negative = text.since(from).find('-') != std::string_view::npos;
  return static_cast<int>(std::lround(sixths)) * (negative ? -1 : 1);
}

// A digit right after the name: "ft2", "ft3". Anything else may be the start of "ft4 in" or "h30min".
Read<int> read_attached_power(Scanner& text, std::string_view name) {
  const std::size_t from = text.at();
  const std::string_view written = text.digits();
  const char next = text.ahead();
  const bool square_or_cube = written == "2" || written == "3";
  const bool starts_a_number =
      !square_or_cube || next == '.' || next == '/' || is_letter(next) || next == '"' || next == '\'';
  const bool divisor_follows = square_or_cube && next == '/' && !is_digit(text.ahead(1));
  if (starts_a_number && !divisor_follows)
    return QuantityFault{
        from, fmt::format("'{}{}' is neither a power nor a new number", name, written),
        fmt::format("write a space before the number: '{} {}', or the power as '{}^2'", name, written, name)};
  return (written.front() - '0') * one;
}

Read<Factor> read_factor(Scanner& text, Dimension needed) {
  const std::size_t from = text.at();
  const std::string_view name = take_name(text);
  if (name.empty()) return text.unexpected("a unit");
  if (name == "'" && text.ahead() == '\'')
    return QuantityFault{from, "'' cannot be read", "write \" or \"in\" for inches"};
  const NamedUnit* unit = find_unit(name);
  if (!unit)
    return QuantityFault{from, fmt::format("no unit is called {}", quoted(name)),
                         help_for_unknown_unit(name, needed)};

  const bool takes_power = is_letter(name.front()) && unit->use == NamedUnit::Use::combines;
  Read<int> power{one};
  if (takes_power && text.take('^'))
    power = read_written_power(text);
  else if (takes_power && is_digit(text.ahead()))
    power = read_attached_power(text, name);
  if (auto* fault = std::get_if<QuantityFault>(&power)) return std::move(*fault);
  return Factor{unit, std::get<int>(power), from};
}

// Goes to the next factor of a product: "kip ft", "kip-ft", "kip*ft". Stays if there is none.
bool go_to_next_factor(Scanner& text) {
  Scanner look = text;
  const bool spaces = look.skip_spaces();
  const bool star = look.take('*');
  if (star) look.skip_spaces();
  const bool hyphen = !spaces && !star && look.take('-');
  if (!is_letter(look.ahead()) || !(spaces || star || hyphen)) return false;
  text = look;
  return true;
}

// Multiplies `factor` into the unit; `below` the line for a divisor.
std::optional<QuantityFault> multiply(WrittenUnit& unit, const Factor& factor, bool below, bool first) {
  const bool alone =
      factor.unit->use == NamedUnit::Use::alone || (unit.single && unit.single->use == NamedUnit::Use::alone);
  if (!first && alone)
    return QuantityFault{factor.from, "degC, degF and % are not part of other units",
                         "write a step of one degree as K"};
  (below ? unit.below : unit.above) *= raised(factor.unit->si, factor.sixths);
  const Dimension d = scaled(factor.unit->dimension, factor.sixths);
  unit.dimension = below ? unit.dimension - d : unit.dimension + d;
  unit.single = first && !below && factor.sixths == one ? factor.unit : nullptr;
  return {};
}

// "psi^0.5 in^1.5": factors up to something that is not one.
std::optional<QuantityFault> read_product(Scanner& text, WrittenUnit& unit, bool below, bool first,
                                          Dimension needed) {
  do {
    const Read<Factor> factor = read_factor(text, needed);
    if (auto* fault = std::get_if<QuantityFault>(&factor)) return *fault;
    if (auto fault = multiply(unit, std::get<Factor>(factor), below, first)) return fault;
    first = false;
  } while (go_to_next_factor(text));
  return {};
}

// After '/': one factor, or a product in brackets.
std::optional<QuantityFault> read_divisor(Scanner& text, WrittenUnit& unit, Dimension needed) {
  text.skip_spaces();
  if (!text.take('(')) {
    const Read<Factor> factor = read_factor(text, needed);
    if (auto* fault = std::get_if<QuantityFault>(&factor)) return *fault;
    return multiply(unit, std::get<Factor>(factor), true, false);
  }
  text.skip_spaces();
  if (auto fault = read_product(text, unit, true, false, needed)) return fault;
  text.skip_spaces();
  if (!text.take(')')) return text.unexpected("')'");
  return {};
}

}  // namespace

Read<WrittenUnit> read_unit(Scanner& text, Dimension needed) {
  WrittenUnit unit;
  unit.from = text.at();
  if (text.ahead() == '1') {  // "1/h" in a table; the caller has dealt with numbers
    text.step();
    unit.to = text.at();
  } else if (auto fault = read_product(text, unit, false, true, needed)) {
    return *fault;
  }
  unit.to = text.at();
  text.skip_spaces();
  if (text.take('/')) {
    if (auto fault = read_divisor(text, unit, needed)) return *fault;
    unit.to = text.at();
  }
  text.go_back_to(unit.to);
  return unit;
}

std::optional<double> one_in_si(const WrittenUnit& unit, Dimension needed) {
  constexpr Dimension gravity = dimension_of<Acceleration>();
  const bool made_of_force = needed == dimension_of<Force>() || needed == dimension_of<Stress>() ||
                             needed == dimension_of<Moment>() || needed == dimension_of<Stiffness>();
  double si = 0.0;
  if (unit.dimension == needed)
    si = unit.above / unit.below;
  else if (made_of_force && unit.dimension + gravity == needed)
    si = unit.above * standard_gravity_m_per_s2 / unit.below;
  else if (needed == dimension_of<Density>() && unit.dimension - gravity == needed)
    si = unit.above / unit.below / standard_gravity_m_per_s2;
  if (!std::isfinite(si) || !(si > 0.0)) return {};
  return si;
}

}  // namespace firstpick
