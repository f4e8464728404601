// The angle at which something is largest: sampled, then the best sample's surroundings narrowed by the golden section.
//
// Finds the maximum of what rises and falls once between neighbouring samples; 3 degrees apart that is what statics of a
// turn gives. What is not a number, at a sample or in
// the search between them, counts as larger than anything: the caller meets it.
#pragma once

#include <cmath>
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

// `value_at` gives a double for an Angle; `samples` are in order and not empty. Within 1e-7 rad.
template <class Value>
Angle worst_angle(const std::vector<Angle>& samples, const Value& value_at) {
  std::size_t best = 0;
  double most = -INFINITY;
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const double value = value_at(samples[i]);
    if (std::isnan(value)) return samples[i];
    if (value > most) {
      most = value;
      best = i;
    }
  }
  Angle low = samples[best == 0 ? 0 : best - 1], high = samples[best + 1 == samples.size() ? best : best + 1];
  const double part = 0.5 * (std::sqrt(5.0) - 1.0);
  Angle a = high - part * (high - low), b = low + part * (high - low);
  double at_a = value_at(a), at_b = value_at(b);
  while (high - low > 1e-7 * radian) {
    if (std::isnan(at_a)) return a;
    if (std::isnan(at_b)) return b;
    if (at_a > at_b) {
      high = b;
      b = a;
      at_b = at_a;
      a = high - part * (high - low);
      at_a = value_at(a);
    } else {
      low = a;
      a = b;
      at_a = at_b;
      b = low + part * (high - low);
      at_b = value_at(b);
    }
  }
  const Angle found = 0.5 * (low + high);
  const double at_found = value_at(found);
  return std::isnan(at_found) || at_found > most ? found : samples[best];
}

}  // namespace firstpick::demands
