#include "demands/round_wall.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace firstpick::demands {

namespace {

struct Section {
  double at, cos, sin;
};
constexpr std::size_t coarse = 10;
const std::array<Section, 720> sections = [] {
  std::array<Section, 720> all{};
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double at = 2.0 * M_PI * static_cast<double>(i) / static_cast<double>(all.size());
    all[i] = {at, std::cos(at), std::sin(at)};
  }
  return all;
}();

}  // namespace

Outcome<RoundState> round_state(const RoundBand& band) {
  const double inner = in(m, band.inside), outer = in(m, band.outside), h = in(m, band.height);
  bool usable = inner > 0.0 && outer > inner && h > 0.0 && std::isfinite(outer + h);
  for (const RoundPull& pull : band.pulls)
    usable = usable && std::isfinite(pull.at.value() + pull.outward.value() + pull.around.value());
  if (!usable) return NotAssessed{"a number of the round wall that the insert bends is not usable", {}};

  const double t = outer - inner, R = 0.5 * (inner + outer), neutral = t / std::log(outer / inner),
               off = R - neutral;
  const double per_moment = std::max((neutral - inner) / inner, (outer - neutral) / outer) / (h * t * off);
  struct Pull {
    double at, cos, sin, outward, around;
  };
  std::vector<Pull> pulls;
  for (const RoundPull& pull : band.pulls) {
    double at = std::fmod(in(radian, pull.at), 2.0 * M_PI);
    if (at < 0.0) at += 2.0 * M_PI;
    pulls.push_back({at, std::cos(at), std::sin(at), in(newton, pull.outward), in(newton, pull.around)});
  }
  struct Found {
    double moment, axial, tension;
  };
  // `at`: 0 to 2 pi.
  const auto found_at = [&](double at, double cos_at, double sin_at) -> Found {
    double M = 0.0, N = 0.0;
    for (const Pull& pull : pulls) {
      const double a = at < pull.at ? at - pull.at + 2.0 * M_PI : at - pull.at, left = M_PI - a;
      const double c = cos_at * pull.cos + sin_at * pull.sin, s = sin_at * pull.cos - cos_at * pull.sin;
      M += pull.outward * (1.0 + 0.5 * c - left * s) - pull.around * (1.5 * s - left * (1.0 - c));
      N += pull.outward * (1.5 * c + left * s) + std::abs(pull.around * (0.5 * s - left * c));
    }
    M *= R / (2.0 * M_PI), N /= 2.0 * M_PI;
    return {M, N, std::abs(M) * per_moment + std::max(N, 0.0) / (h * t)};
  };

  RoundState worst;
  bool first = true;
  const auto look = [&](double at, double cos_at, double sin_at) {
    const Found found = found_at(at, cos_at, sin_at);
    if (first || found.tension > worst.tension.value())
      worst = {at * radian, Moment::from_value(std::abs(found.moment)), found.axial * newton,
               Stress::from_value(found.tension)};
    first = false;
    return found.tension;
  };
  // Kinks are at the pulls alone; between them all is smooth: a coarse round, and a fine one beside each peak of it.
  std::array<double, sections.size() / coarse> rough{};
  for (std::size_t i = 0; i < rough.size(); ++i) {
    const Section& here = sections[i * coarse];
    rough[i] = look(here.at, here.cos, here.sin);
  }
  for (std::size_t i = 0; i < rough.size(); ++i) {
    const double before = rough[(i + rough.size() - 1) % rough.size()], after = rough[(i + 1) % rough.size()];
    if (rough[i] < before || rough[i] < after) continue;  // a number that is none is looked at, and stays
    for (std::size_t k = 1; k < 2 * coarse; ++k) {
      const Section& here = sections[(i * coarse + sections.size() - coarse + k) % sections.size()];
      look(here.at, here.cos, here.sin);
    }
  }
  for (const Pull& pull : pulls) look(pull.at, pull.cos, pull.sin);
  if (!std::isfinite(worst.tension.value())) return NotAssessed{"the round wall could not be computed", {}};
  return worst;
}

}  // namespace firstpick::demands
