// One quantity: a sign, then terms of a number and a unit. Numbers: number_text.cpp. Units: unit_text.cpp.
#include "units/parse.hpp"

#include <cmath>

#include <fmt/format.h>

#include "units/number_text.hpp"
#include "units/scanner.hpp"
#include "units/unit_text.hpp"

namespace firstpick {
namespace {

struct Term {
  WrittenNumber number;
  WrittenUnit unit;
  double one_si;  // one of the unit
};

std::string examples_of(Dimension needed) {
  const QuantityKind* kind = find_kind(needed);
  return kind ? fmt::format("write {} as {}", kind->name, kind->examples) : std::string{};
}

std::string kind_or_unit(Dimension dimension, std::string_view unit) {
  const QuantityKind* kind = find_kind(dimension);
  return kind ? std::string{kind->name} : fmt::format("a quantity in {}", quoted(unit));
}

QuantityFault wrong_dimension(const WrittenUnit& unit, std::string_view written, Dimension needed) {
  if (unit.dimension == needed) return {unit.from, "the unit is too large or too small", {}};
  const QuantityKind* kind = find_kind(needed);
  return {unit.from,
          fmt::format("given: {}, needed: {}", kind_or_unit(unit.dimension, written),
                      kind ? kind->name : "a quantity of another kind"),
          examples_of(needed)};
}

Read<Term> read_term(Scanner& text, Dimension needed) {
  const Read<WrittenNumber> number = read_number(text);
  if (auto* fault = std::get_if<QuantityFault>(&number)) return *fault;
  Term term{std::get<WrittenNumber>(number), {}, 1.0};

  text.skip_spaces();
  if (text.at_end()) return QuantityFault{term.number.to, "no unit", examples_of(needed)};
  if (is_digit(text.ahead()))
    return QuantityFault{text.at(), "two numbers without a unit between them", examples_of(needed)};

  const Read<WrittenUnit> unit = read_unit(text, needed);
  if (auto* fault = std::get_if<QuantityFault>(&unit)) return *fault;
  term.unit = std::get<WrittenUnit>(unit);
  const std::optional<double> one = one_in_si(term.unit, needed);
  if (!one) {
    const bool unit_is_whole =
        text.at_end() || std::string_view{" \t-0123456789"}.find(text.ahead()) != std::string_view::npos;
    if (!unit_is_whole) return text.unexpected("the end of the unit");  // "m²" is no length
    return wrong_dimension(term.unit, text.since(term.unit.from), needed);
  }
  term.one_si = *one;
  return term;
}

// Goes to the number of the next term: "8 ft 4 in", "8 ft-4 in", "8' - 4\"". Stays if there is none.
// "8 ft -4 in" stays: it may be meant as eight feet less four inches.
bool go_to_next_term(Scanner& text) {
  Scanner look = text;
  const bool before = look.skip_spaces();
  const bool hyphen = look.take('-');
  const bool after = hyphen && look.skip_spaces();
  if (hyphen && before != after) return false;
  if (!is_digit(look.ahead()) && !(look.ahead() == '.' && is_digit(look.ahead(1)))) return false;
  text = look;
  return true;
}

std::optional<QuantityFault> fault_between(const Term& large, const Term& small) {
  const NamedUnit* a = large.unit.single;
  const NamedUnit* b = small.unit.single;
  if (!a || !b || a->chain == NamedUnit::Chain::none || a->chain != b->chain)
    return QuantityFault{small.number.from, "these two units cannot be written together",
                         "only feet with inches, and d, h, min and s, are written together; "
                         "else write one number"};
  if (b->parts >= a->parts)
    return QuantityFault{
        small.number.from, fmt::format("{} after {}: the larger unit comes first", b->name, a->name), {}};
  if (!large.number.whole)
    return QuantityFault{large.number.from,
                         fmt::format("only the last number may have a fraction, not that of {}", a->name),
                         "write \"8 ft 6 in\" or \"8.5 ft\""};
  const int most = a->parts / b->parts;
  if (!(small.number.value < most))
    return QuantityFault{
        small.number.from, fmt::format("{} {} or more after {}: is it a slip?", most, b->name, a->name),
        fmt::format("after {} there are less than {} {}; else write one number", a->name, most, b->name)};
  return {};
}

// Terms are added in the unit of the last one, so that "8 ft 4 in" is the same double as "100 in".
Read<double> sum_in_si(Scanner& text, Dimension needed) {
  Read<Term> first = read_term(text, needed);
  if (auto* fault = std::get_if<QuantityFault>(&first)) return *fault;
  Term last = std::get<Term>(first);
  double sum = last.number.value;

  while (go_to_next_term(text)) {
    const Read<Term> next = read_term(text, needed);
    if (auto* fault = std::get_if<QuantityFault>(&next)) return *fault;
    const Term& smaller = std::get<Term>(next);
    if (auto fault = fault_between(last, smaller)) return *fault;
    const int smaller_in_larger = last.unit.single->parts / smaller.unit.single->parts;
    sum = sum * smaller_in_larger + smaller.number.value;
    last = smaller;
  }
  const double si = sum * last.one_si;
  if (!std::isfinite(si) || (sum != 0.0 && !std::isnormal(si)))
    return QuantityFault{last.number.from, "the quantity is too large or too small", {}};
  return si;
}

double zero_of_scale(const WrittenUnit& unit) { return unit.single ? unit.single->absolute_zero : 0.0; }

// A temperature is one number on a scale; its sign counts before the zero of the scale is added.
Read<double> temperature_in_kelvin(Scanner& text, double sign, std::size_t from, Dimension needed) {
  const Read<Term> read = read_term(text, needed);
  if (auto* fault = std::get_if<QuantityFault>(&read)) return *fault;
  const Term& term = std::get<Term>(read);
  const double kelvin = (sign * term.number.value + zero_of_scale(term.unit)) * term.one_si;
  if (!(kelvin >= 0.0)) return QuantityFault{from, "a temperature below absolute zero", {}};
  if (!std::isfinite(kelvin)) return QuantityFault{from, "the quantity is too large or too small", {}};
  return kelvin;
}

bool is_bare_ratio(Scanner text, Dimension needed) {
  if (needed != Dimension{} || !std::holds_alternative<WrittenNumber>(read_number(text))) return false;
  text.skip_spaces();
  return text.at_end();
}

Read<double> read_quantity(Scanner& text, Dimension needed) {
  const std::size_t from = text.at();
  const double sign = text.take('-') ? -1.0 : 1.0;
  if (sign > 0.0) text.take('+');

  if (needed == dimension_of<Temperature>()) return temperature_in_kelvin(text, sign, from, needed);
  if (is_bare_ratio(text, needed)) {
    const Read<WrittenNumber> number = read_number(text);
    return sign * std::get<WrittenNumber>(number).value + 0.0;
  }
  Read<double> size = sum_in_si(text, needed);
  if (auto* si = std::get_if<double>(&size)) *si = sign * *si + 0.0;  // + 0.0 makes -0 a plain zero
  return size;
}

}  // namespace

std::variant<double, QuantityFault> parse_in_si(std::string_view written, Dimension needed) {
  Scanner text{written};
  text.skip_spaces();
  if (text.at_end()) return QuantityFault{0, "nothing is written here", examples_of(needed)};

  Read<double> si = read_quantity(text, needed);
  if (std::holds_alternative<QuantityFault>(si)) return si;
  text.skip_spaces();
  if (!text.at_end()) return text.unexpected("the end of the quantity");
  return si;
}

namespace {

std::optional<WrittenUnit> whole_unit(std::string_view unit, Dimension needed) {
  Scanner text{unit};
  const Read<WrittenUnit> read = read_unit(text, needed);
  if (std::holds_alternative<QuantityFault>(read) || !text.at_end()) return {};
  return std::get<WrittenUnit>(read);
}

}  // namespace

std::optional<double> unit_in_si(std::string_view unit, Dimension needed) {
  const std::optional<WrittenUnit> read = whole_unit(unit, needed);
  if (!read || zero_of_scale(*read) != 0.0) return {};
  return one_in_si(*read, needed);
}

std::optional<double> number_in_si(double number, std::string_view unit, Dimension needed) {
  const std::optional<WrittenUnit> read = whole_unit(unit, needed);
  const std::optional<double> one = read ? one_in_si(*read, needed) : std::nullopt;
  if (!one) return {};
  const double si = (number + zero_of_scale(*read)) * *one;
  if (!std::isfinite(si) || (needed == dimension_of<Temperature>() && !(si >= 0.0))) return {};
  return si;
}

}  // namespace firstpick
