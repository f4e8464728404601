// The one test that every number passes before a formula sees it. Written so that NaN fails it.
#pragma once

#include "units/quantity.hpp"

namespace firstpick::resistances {

template <class Q>
bool is_usable(const Q& q) {
  return is_finite(q) && q.value() > 0.0;
}

}  // namespace firstpick::resistances
