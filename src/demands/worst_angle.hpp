// The angle at which something is largest: sampled, then the best sample's surroundings narrowed by the golden section.
//
// Finds the maximum of what rises and falls once between neighbouring samples; 3 degrees apart that is what statics of a
// turn gives. What is not a number, at a sample or in
// the search between them, counts as larger than anything: the caller meets it.
#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "units/quantity.hpp"

namespace firstpick::demands {

// Both ends included, from the lower to the higher, no more than `step` apart.
inline std::vector<Angle> angles_between(Angle from, Angle to, Angle step) {
  const Angle low = from < to ? from : to, range = abs(to - from);
  const int count = static_cast<int>(std::ceil((range / step).value() - 1e-9));
  std::vector<Angle> all{low};
  for (int i = 1; i < count; ++i) all.push_back(low + range * (static_cast<double>(i) / count));
  if (count > 0) all.push_back(low + range);
  return all;
}

// `samples` are in order and not empty. Within 1e-7 rad.
Angle worst_angle(const std::vector<Angle>& samples, const std::function<double(Angle)>& value_at);

}  // namespace firstpick::demands
