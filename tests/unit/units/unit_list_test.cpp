// The lists of units and of kinds of quantities agree with each other and with the parser.

#include <catch2/catch.hpp>

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "units/parse.hpp"
#include "units/unit_list.hpp"

using namespace firstpick;

namespace {

std::vector<std::string> between(std::string_view text, std::string_view open, std::string_view close) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(open); at != std::string_view::npos; at = text.find(open, at)) {
    const std::size_t from = at + open.size();
    const std::size_t to = text.find(close, from);
    found.emplace_back(text.substr(from, to - from));
    at = to + close.size();
  }
  return found;
}

}  // namespace

TEST_CASE("no unit is listed twice, and every unit is found") {
  std::set<std::string_view> names;
  for (const NamedUnit& unit : all_units()) {
    CAPTURE(unit.name);
    CHECK(names.insert(unit.name).second);
    CHECK(find_unit(unit.name) == &unit);
    CHECK(unit.si > 0.0);
  }
  CHECK(names.size() > 50);
  CHECK(find_unit("") == nullptr);
  CHECK(find_unit("parsec") == nullptr);
}

TEST_CASE("every unit that may be in a list of its own kind is read as one of it") {
  for (const NamedUnit& unit : all_units()) {
    CAPTURE(unit.name);
    CHECK(number_in_si(1.0, unit.name, unit.dimension) == (1.0 + unit.absolute_zero) * unit.si);
  }
}

TEST_CASE("feet and clocks step down by whole numbers of the smallest unit") {
  for (const NamedUnit& unit : all_units()) {
    CAPTURE(unit.name);
    const double smallest = unit.chain == NamedUnit::Chain::feet ? inch.value() : 1.0;
    const double expected = unit.chain == NamedUnit::Chain::none ? 0.0 : unit.si / smallest;
    CHECK(unit.parts == Approx(expected).epsilon(1e-15));
  }
}

TEST_CASE("the examples in a message can be read as the quantity they stand for") {
  for (const QuantityKind& kind : all_kinds()) {
    const auto examples = between(kind.examples, "\"", "\"");
    CHECK(examples.size() == 2);
    for (const std::string& example : examples) {
      CAPTURE(kind.name, example);
      CHECK(std::holds_alternative<double>(parse_in_si(example, kind.dimension)));
    }
  }
  CHECK(all_kinds().size() == 15);
}

TEST_CASE("the units a message offers can be read") {
  for (const QuantityKind& kind : all_kinds()) {
    CAPTURE(kind.name);
    std::string list = ", " + std::string{kind.units} + ",";
    for (const std::string word : {"and ", "as weights", "or none"})
      if (const auto at = list.find(word); at != std::string::npos) list.erase(at, word.size());
    std::size_t offered = 0;
    for (std::string unit : between(list, ", ", ",")) {
      unit.erase(unit.find_last_not_of(' ') + 1);
      CAPTURE(unit);
      offered += unit.empty() ? 0 : 1;
      CHECK((unit.empty() || unit_in_si(unit, kind.dimension) || number_in_si(1.0, unit, kind.dimension)));
    }
    CHECK(offered > 0);
  }
}
