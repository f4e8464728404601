#include "demands/round_wall.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::demands {

Outcome<RoundState> round_state(const RoundBand& band) {
  const double inner = in(m, band.inside), outer = in(m, band.outside), h = in(m, band.height);
  bool usable = inner > 0.0 && outer > inner && h > 0.0 && std::isfinite(outer + h);
  for (const RoundPull& pull : band.pulls)
    usable = usable && std::isfinite(pull.at.value() + pull.outward.value() + pull.around.value());
  if (!usable) return NotAssessed{"a number of the round wall that the insert bends is not usable", {}};

  const double t = outer - inner, R = 0.5 * (inner + outer), neutral = t / std::log(outer / inner), off = R - neutral;
  const double per_moment = std::max((neutral - inner) / inner, (outer - neutral) / outer) / (h * t * off);
  constexpr int parts = 720;
  std::vector<double> sections;
  for (int i = 0; i < parts; ++i) sections.push_back(2.0 * M_PI * i / parts);
  for (const RoundPull& pull : band.pulls) sections.push_back(in(radian, pull.at));

  RoundState worst;
  bool first = true;
  for (const double at : sections) {
    double M = 0.0, N = 0.0;
    for (const RoundPull& pull : band.pulls) {
      double a = std::fmod(at - in(radian, pull.at), 2.0 * M_PI);
      if (a < 0.0) a += 2.0 * M_PI;
      const double c = std::cos(a), s = std::sin(a), P = in(newton, pull.outward), S = in(newton, pull.around);
      M += R / (2.0 * M_PI) * (P * (1.0 + 0.5 * c - (M_PI - a) * s) - S * (1.5 * s - (M_PI - a) * (1.0 - c)));
      N += (P * (1.5 * c + (M_PI - a) * s) + std::abs(S * (0.5 * s - (M_PI - a) * c))) / (2.0 * M_PI);
    }
    const double tension = std::abs(M) * per_moment + std::max(N, 0.0) / (h * t);
    if (!first && !(tension > worst.tension.value())) continue;
    first = false;
    worst = {at * radian, Moment::from_value(std::abs(M)), N * newton, Stress::from_value(tension)};
  }
  if (!std::isfinite(worst.tension.value())) return NotAssessed{"the round wall could not be computed", {}};
  return worst;
}

}  // namespace firstpick::demands
