#include "demands/loop_share.hpp"

#include <cmath>
#include <limits>

namespace firstpick::demands {

Ratio loaded_leg_share(Angle lean, std::optional<Angle> opening) {
  const Ratio none{std::numeric_limits<double>::quiet_NaN()};
  const double alpha_rad = lean.value();
  if (!std::isfinite(alpha_rad) || alpha_rad < 0.0) return none;
  if (!opening) return 1.0;
  const double delta_rad = 0.5 * opening->value();
  if (!(delta_rad > 0.0 && delta_rad < M_PI / 2)) return none;
  if (alpha_rad >= delta_rad) return 1.0;
  return std::sin(delta_rad + alpha_rad) / std::sin(2.0 * delta_rad);
}

}  // namespace firstpick::demands
