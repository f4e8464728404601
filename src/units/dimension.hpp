// The dimension of a quantity as numbers, so that the one parser can compare what is written with what is
// needed.
//
// Exponents are kept in sixths: empirical anchor formulas take square roots and powers of 5/3, and both stay
// exact. dimension_of<Q>() reads the exponents from the Boost.Units type; there is no second list that could
// disagree.
#pragma once

#include <type_traits>

#include <boost/units/get_dimension.hpp>

#include "units/quantity.hpp"

namespace firstpick {

struct Dimension {
  int length = 0, mass = 0, time = 0, angle = 0, temperature = 0;  // each in sixths: an area has length = 12

  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
  friend constexpr Dimension operator+(const Dimension& a, const Dimension& b) {
    return {a.length + b.length, a.mass + b.mass, a.time + b.time, a.angle + b.angle,
            a.temperature + b.temperature};
  }
  friend constexpr Dimension operator-(const Dimension& a, const Dimension& b) {
    return {a.length - b.length, a.mass - b.mass, a.time - b.time, a.angle - b.angle,
            a.temperature - b.temperature};
  }
};

namespace boost_units {  // reads the type list of a Boost.Units dimension

template <class List>
struct Exponents {
  using Exponent = typename List::item::value_type;  // a bu::static_rational
  static_assert(6 % Exponent::Denominator == 0, "this power cannot be written in sixths");
  static constexpr int sixths = static_cast<int>(Exponent::Numerator * (6 / Exponent::Denominator));

  template <class Base>
  static constexpr int of = std::is_same_v<typename List::item::tag_type, Base> ? sixths : 0;

  static constexpr Dimension value =
      Dimension{of<bu::length_base_dimension>, of<bu::mass_base_dimension>, of<bu::time_base_dimension>,
                of<bu::plane_angle_base_dimension>, of<bu::temperature_base_dimension>} +
      Exponents<typename List::next>::value;
};
template <>
struct Exponents<bu::dimensionless_type> {
  static constexpr Dimension value{};
};

template <class Q>
struct UnitOf;
template <class Unit>
struct UnitOf<bu::quantity<Unit>> {
  using type = Unit;
};
template <class Unit>
struct UnitOf<bu::quantity<bu::absolute<Unit>>> {  // a temperature on a scale
  using type = Unit;
};

}  // namespace boost_units

template <class Q>
constexpr Dimension dimension_of() {
  using Unit = typename boost_units::UnitOf<Q>::type;
  return boost_units::Exponents<typename bu::get_dimension<Unit>::type>::value;
}

}  // namespace firstpick
