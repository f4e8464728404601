// Can any text crash the parser of quantities, or make it hand out something that is not a quantity?
//
// Open-ended: built by -DFIRSTPICK_FUZZ=ON, run by hand on tests/fuzz/corpus/quantity with -max_len=80.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "units/parse.hpp"
#include "units/print.hpp"

namespace {

using namespace firstpick;

void require(bool holds) {
  if (!holds) std::abort();
}

bool has_digit(std::string_view text) { return text.find_first_of("0123456789") != std::string_view::npos; }

// What is printed can be read again, and as nearly the same quantity.
template <class Q>
void prints_so_that_it_can_be_read(Q q) {
  if (q.value() != 0.0 && std::abs(q.value()) < 1e-300)
    return;  // may be no number any more in the unit of print
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::si})
    for (const Rounding rounding : {Rounding::nearest, Rounding::up, Rounding::down}) {
      const std::string text = print(q, system, rounding);
      if (text == "not a number") continue;  // finite in SI, too large in the unit of print
      const auto again = parse<Q>(text);
      require(std::holds_alternative<Q>(again));
      require(std::signbit(std::get<Q>(again).value()) == std::signbit(q.value()) ||
              std::get<Q>(again).value() == 0.0);
    }
}

template <class Q>
void as_quantity(std::string_view text) {
  const std::variant<Q, QuantityFault> read = parse<Q>(text);
  if (const auto* fault = std::get_if<QuantityFault>(&read)) {
    require(fault->at <= text.size());
    require(!fault->what.empty());
    return;
  }
  const Q q = std::get<Q>(read);
  require(std::isfinite(q.value()));
  require(has_digit(text));
  prints_so_that_it_can_be_read(q);
}

template <class Q>
void as_unit(std::string_view text) {
  if (const std::optional<Q> one = unit_named<Q>(text)) {
    require(std::isfinite(one->value()) && one->value() > 0.0);
    require(quantity_in<Q>(1.0, text) == one);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  as_quantity<Length>(text);
  as_quantity<Area>(text);
  as_quantity<Volume>(text);
  as_quantity<Mass>(text);
  as_quantity<Density>(text);
  as_quantity<Force>(text);
  as_quantity<Stress>(text);
  as_quantity<Moment>(text);
  as_quantity<Angle>(text);
  as_quantity<Duration>(text);
  as_quantity<Speed>(text);
  as_quantity<Acceleration>(text);
  as_quantity<Temperature>(text);
  as_quantity<Ratio>(text);
  as_quantity<Stiffness>(text);
  as_unit<Length>(text);
  as_unit<Force>(text);
  as_unit<Ratio>(text);
  as_unit<RootStress>(text);
  as_unit<BreakoutCoefficient>(text);
  as_unit<DeepBreakoutCoefficient>(text);
  return 0;
}
