#include "editor/quantity_pattern.hpp"

#include <string_view>

#include <fmt/format.h>

#include "units/unit_list.hpp"

namespace firstpick::editor {
namespace {

using plan::Kind;
using plan::Limit;

constexpr std::string_view decimal = R"(([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?)";
constexpr std::string_view fraction = "([0-9]+( +| *- *))?[0-9]+/[0-9]+";

std::string escaped(std::string_view name) {
  std::string all;
  for (const char c : name) all += c == '.' ? std::string("\\.") : std::string(1, c);
  return all;
}

bool stands_for(const NamedUnit& unit, Kind kind) {
  if (unit.dimension == plan::dimension_for(kind)) return true;
  return kind == Kind::force && unit.dimension == dimension_of<Mass>();  // the weight of that mass
}

// "mm|cm|m|...", and units made of others: "kN/m2", "in^2"; "in2" where a power of a length is meant.
std::string units_of(Kind kind) {
  std::string all;
  for (const NamedUnit& unit : all_units())
    if (stands_for(unit, kind)) all += (all.empty() ? "" : "|") + escaped(unit.name);
  if (kind == Kind::temperature) return all;
  all += std::string(all.empty() ? "" : "|") + R"([A-Za-z][A-Za-z0-9 .-]*[/^*][A-Za-z0-9^*./() -]*)";
  if (kind == Kind::area) all += "|[A-Za-z]+2";
  return all;
}

bool may_be_negative(Limit limit) { return limit == Limit::none; }

}  // namespace

std::string quantity_pattern(Kind kind, Limit limit) {
  const std::string_view sign = may_be_negative(limit) ? "[+-]?" : "\\+?";
  if (plan::dimension_for(kind) == Dimension{})  // a number or a share
    return fmt::format("^ *{}({}|{}) *%? *$", sign, fraction, decimal);
  const std::string term = fmt::format("({}|{}) *({})", fraction, decimal, units_of(kind));
  const bool chained = kind == Kind::length || kind == Kind::duration;  // 8 ft 4 in, 14 h 30 min
  return chained ? fmt::format("^ *{0}{1}( *-? *{1})* *$", sign, term)
                 : fmt::format("^ *{}{} *$", sign, term);
}

}  // namespace firstpick::editor
