// What the parser made of a text, for tests: the quantity, or the fault. Either fails the test when it is the
// other.
#pragma once

#include <catch2/catch.hpp>

#include <string_view>
#include <variant>

#include "units/parse.hpp"

namespace firstpick::tests {

template <class Q>
Q read_as(std::string_view text) {
  CAPTURE(text);
  const auto read = parse<Q>(text);
  const auto* fault = std::get_if<QuantityFault>(&read);
  CAPTURE(fault ? fault->what : "");
  REQUIRE(std::holds_alternative<Q>(read));
  return std::get<Q>(read);
}

template <class Q>
QuantityFault fault_in(std::string_view text) {
  CAPTURE(text);
  const auto read = parse<Q>(text);
  REQUIRE(std::holds_alternative<QuantityFault>(read));
  return std::get<QuantityFault>(read);
}

}  // namespace firstpick::tests
