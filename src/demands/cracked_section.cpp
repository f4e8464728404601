#include "demands/cracked_section.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>

#include <boost/math/tools/roots.hpp>

namespace firstpick::demands {

namespace {

constexpr double least_pressed_depth = 1e-9;  // of h: where the search for x begins

struct DepthLayer {
  double area_m2, depth_m;
};

// Of unit slope k: force (tension positive, over k) and moment about the middle of the depth (over k).
struct SectionSums {
  double force_m3, moment_m4;
};

SectionSums section_sums(double width_m, double height_m, const std::vector<DepthLayer>& layers, double n,
                         double x_m) {
  const double pressed_m3 = 0.5 * width_m * x_m * x_m;
  SectionSums all{-pressed_m3, pressed_m3 * (0.5 * height_m - x_m / 3.0)};
  for (const DepthLayer& layer : layers) {
    const double counted = (layer.depth_m < x_m ? n - 1.0 : n) * layer.area_m2 * (layer.depth_m - x_m);
    all.force_m3 += counted;
    all.moment_m4 += counted * (layer.depth_m - 0.5 * height_m);
  }
  return all;
}

std::optional<NotAssessed> cracked_refusal(const CrackedSection& section, Force axial, Moment moment) {
  const Length height = section.top - section.bottom;
  if (!(section.width > Length{}) || !is_finite(section.width) || !(height > Length{}) ||
      !is_finite(height) || !(section.modular_ratio >= Ratio::from_value(1.0)) ||
      !is_finite(section.modular_ratio) || !is_finite(axial) || !is_finite(moment))
    return NotAssessed{"a number of the cracked section is not usable", {}};
  for (const BarLayer& layer : section.layers)
    if (!(layer.area > Area{}) || !is_finite(layer.area) ||
        !(layer.height > section.bottom && layer.height < section.top))
      return NotAssessed{"a layer of bars has no usable area or lies outside the depth of the piece", {}};
  return {};
}

}  // namespace

Outcome<CrackedStress> cracked_stress(const CrackedSection& section, Force axial, Moment moment) {
  if (auto gap = cracked_refusal(section, axial, moment)) return *std::move(gap);
  const double b = section.width.value(), h = (section.top - section.bottom).value(),
               n = section.modular_ratio.value();
  const bool pressed_below = moment < Moment{};
  const double N = axial.value(), M = std::abs(moment.value());
  std::vector<DepthLayer> layers;
  for (const BarLayer& layer : section.layers)
    layers.push_back({layer.area.value(),
                      (pressed_below ? layer.height - section.bottom : section.top - layer.height).value()});

  CrackedStress found{.bars = std::vector<Stress>(layers.size()), .pressed_below = pressed_below};
  const auto off = [&](double x) {
    const SectionSums all = section_sums(b, h, layers, n, x);
    return all.force_m3 * M - all.moment_m4 * N;
  };
  const double low = least_pressed_depth * h, at_low = off(low), at_high = off(h);
  if (N <= 0.0 && (M <= -N * h / 6.0 || at_high >= 0.0)) {  // inside the kern
    found.whole = true;
    found.pressed = h * m;
    found.concrete = Stress::from_value(-N / (b * h) + 6.0 * M / (b * h * h));
    return found;
  }
  if (std::ranges::none_of(layers, [&](const DepthLayer& layer) { return layer.depth_m > 0.5 * h; }))
    return NotAssessed{"no bars lie on the side that is pulled", {}};
  if (!(at_low > 0.0)) return NotAssessed{"the pull along the piece opens its whole depth", {}};
  if (!(at_high < 0.0)) return NotAssessed{"the pressed depth of the cracked section was not found", {}};
  std::uintmax_t steps = 200;
  const auto [x_low, x_high] = boost::math::tools::toms748_solve(
      off, low, h, at_low, at_high, boost::math::tools::eps_tolerance<double>(48), steps);
  const double x = 0.5 * (x_low + x_high);
  const SectionSums all = section_sums(b, h, layers, n, x);
  // Both equations give k. Together, for either may be empty: no moment, or no force along the piece.
  const double force_m4 = all.force_m3 * h;
  const double slope = (M * all.moment_m4 + N * h * force_m4) /
                       (all.moment_m4 * all.moment_m4 + force_m4 * force_m4);
  if (!(slope > 0.0) || !std::isfinite(slope))
    return NotAssessed{"the pressed depth of the cracked section was not found", {}};
  for (std::size_t i = 0; i < layers.size(); ++i)
    found.bars[i] = Stress::from_value(n * slope * (layers[i].depth_m - x));
  found.concrete = Stress::from_value(slope * x);
  found.pressed = x * m;
  return found;
}

Length crack_width(Stress bar, Stress modulus, Ratio beta, Length cover_to_middle, Length spacing) {
  return 2.0 * (bar / modulus) * beta * root(cover_to_middle * cover_to_middle + 0.25 * spacing * spacing);
}

}  // namespace firstpick::demands
