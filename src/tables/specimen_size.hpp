// A specimen as plans and tables write it: "cylinder 4x8 in" (diameter x height), "cube 150 mm" (side).
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "units/parse.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

struct SpecimenSize {
  std::string shape;  // "cylinder" | "cube"
  Length width{}, height{};
};

// One unit stands for both numbers. The place of a fault is a byte of `words`.
std::variant<SpecimenSize, QuantityFault> specimen_size(std::string_view words);

}  // namespace firstpick::tables
