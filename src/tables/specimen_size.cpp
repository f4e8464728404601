#include "tables/specimen_size.hpp"

#include <fmt/format.h>

namespace firstpick::tables {
namespace {

constexpr std::string_view examples = "write \"cylinder 4x8 in\" or \"cube 150 mm\"";

// A length above zero, or nothing.
std::variant<Length, QuantityFault> side(std::string_view number, std::string_view unit, std::size_t at) {
  auto read = parse<Length>(fmt::format("{} {}", number, unit));
  if (auto* fault = std::get_if<QuantityFault>(&read))
    return QuantityFault{at, fault->what, std::string(examples)};
  if (!(std::get<Length>(read) > Length{}))
    return QuantityFault{at, "a size is above zero", std::string(examples)};
  return std::get<Length>(read);
}

}  // namespace

std::variant<SpecimenSize, QuantityFault> specimen_size(std::string_view words) {
  const std::size_t space = words.find(' ');
  const std::string_view shape = words.substr(0, space);
  const bool cylinder = shape == "cylinder";
  if (!cylinder && shape != "cube")
    return QuantityFault{0, fmt::format("'{}' is neither a cylinder nor a cube", shape),
                         std::string(examples)};
  const std::size_t unit_space = words.rfind(' ');
  if (space == std::string_view::npos || unit_space <= space)
    return QuantityFault{shape.size(), "no size", std::string(examples)};

  const std::string_view numbers = words.substr(space + 1, unit_space - space - 1);
  const std::string_view unit = words.substr(unit_space + 1);
  const std::size_t by = numbers.find('x');
  if (cylinder != (by != std::string_view::npos))
    return QuantityFault{space + 1,
                         cylinder ? "a cylinder has a diameter and a height" : "a cube has one side",
                         std::string(examples)};
  const auto width = side(numbers.substr(0, by), unit, space + 1);
  if (const auto* fault = std::get_if<QuantityFault>(&width)) return *fault;
  const auto height = cylinder ? side(numbers.substr(by + 1), unit, space + by + 2) : width;
  if (const auto* fault = std::get_if<QuantityFault>(&height)) return *fault;
  return SpecimenSize{std::string(shape), std::get<Length>(width), std::get<Length>(height)};
}

}  // namespace firstpick::tables
