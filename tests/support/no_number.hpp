// Numbers that no length, strength or load may have: each must end as "not assessed".
#pragma once

#include <array>
#include <cmath>
#include <limits>

namespace firstpick::tests {

constexpr std::array<double, 6> not_above_zero = {0.0,
                                                  -0.0,
                                                  -1.0,
                                                  std::numeric_limits<double>::quiet_NaN(),
                                                  std::numeric_limits<double>::infinity(),
                                                  -std::numeric_limits<double>::infinity()};

// The neighbouring floating-point numbers of a quantity.
template <class Q>
Q one_step_below(Q q) {
  return Q::from_value(std::nextafter(q.value(), -std::numeric_limits<double>::infinity()));
}
template <class Q>
Q one_step_above(Q q) {
  return Q::from_value(std::nextafter(q.value(), std::numeric_limits<double>::infinity()));
}

}  // namespace firstpick::tests
