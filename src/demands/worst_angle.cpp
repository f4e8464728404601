#include "demands/worst_angle.hpp"

namespace firstpick::demands {

Angle worst_angle(const std::vector<Angle>& samples, const std::function<double(Angle)>& value_at) {
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
  while (!std::isnan(at_a) && !std::isnan(at_b) && high - low > 1e-7 * radian) {
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
  if (std::isnan(at_a)) return a;
  if (std::isnan(at_b)) return b;
  const Angle found = 0.5 * (low + high);
  const double at_found = value_at(found);
  return std::isnan(at_found) || at_found > most ? found : samples[best];
}

}  // namespace firstpick::demands
