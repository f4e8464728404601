#include "demands/wall_strip.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace firstpick::demands {

namespace {

struct StripWay {  // metres
  bool at_support = false;
  double a = 0.0, l = 0.0, width = 0.0;
  std::function<double(double x)> moment_of_one;  // of a pull of one at x from the nearer support
};

bool is_usable(const WallStrip& strip) {
  const auto number = [](double n) { return n >= 0.0 && std::isfinite(n); };
  bool usable = strip.thickness > Length{} && number(strip.thickness.value()) && number(strip.to_support.value()) &&
                (!strip.to_other || number(strip.to_other->value())) && number(strip.across.value()) &&
                number(strip.along.value()) && number(strip.arm.value()) && strip.spread > 0.0 && number(strip.spread) &&
                number(strip.spread_end) && strip.widest > 0.0 && number(strip.widest);
  for (const auto& edge : strip.free_edge) usable = usable && (!edge || number(edge->value()));
  for (const WallPull& pull : strip.others)
    usable = usable && number(pull.across.value()) && is_finite(pull.along) && is_finite(pull.aside);
  return usable;
}

std::vector<StripWay> ways_of(const WallStrip& strip) {
  const double t = in(m, strip.thickness), clear = in(m, strip.to_support), most = strip.widest * t;
  if (!strip.to_other)
    return {{false, clear, 0.0, std::min(t + strip.spread * clear, most), [](double x) { return std::max(0.0, x); }}};
  const double a = clear + 0.5 * t, l = clear + in(m, *strip.to_other) + t, clear_l = l - t;
  std::vector<StripWay> ways{{false, a, l, std::min(t + strip.spread * a * (1.0 - a / l), most), [=](double x) {
                                const double from = x + 0.5 * t;
                                if (!(from > 0.0 && from < l)) return 0.0;
                                return from <= a ? from * (l - a) / l : a * (l - from) / l;
                              }}};
  if (clear_l > 0.0)
    ways.push_back({true, clear, clear_l, std::min(t + strip.spread_end * clear * (2.0 - clear / clear_l), most),
                    [=](double x) { return x > 0.0 && x < clear_l ? x * std::pow(1.0 - x / clear_l, 2) : 0.0; }});
  return ways;
}

// What bends least of the ways to count the other pulls.
std::optional<WallStripState> state_of(const WallStrip& strip, const StripWay& way) {
  const double t = in(m, strip.thickness), clear = in(m, strip.to_support), half = 0.5 * way.width;
  const double H = in(newton, strip.along);
  std::array<double, 2> reach{half, half};
  for (std::size_t side = 0; side < 2; ++side)
    if (strip.free_edge[side]) reach[side] = std::min(in(m, *strip.free_edge[side]), half);
  std::vector<WallPull> others = strip.others;
  std::ranges::stable_sort(others, {}, [](const WallPull& pull) { return abs(pull.aside); });

  std::optional<WallStripState> least;
  for (std::size_t counted = 0; counted <= others.size(); ++counted) {
    std::array<double, 2> sides = reach;
    double of_others = 0.0;
    bool counts_anyhow = false;
    for (std::size_t i = 0; i < others.size(); ++i) {
      const double aside = in(m, others[i].aside);
      double& side = sides[aside > 0.0 ? 0 : 1];
      if (i < counted) of_others += in(newton, others[i].across) * way.moment_of_one(clear - in(m, others[i].along));
      else if (!(std::abs(aside) > t)) counts_anyhow = true;
      else side = std::min(side, 0.5 * std::abs(aside));
    }
    const double width = sides[0] + sides[1];
    if (counts_anyhow || !(width > 0.0)) continue;
    const double M = in(newton, strip.across) * way.moment_of_one(clear) + H * in(m, strip.arm) + of_others;
    const double tension = 6.0 * M / (width * t * t) + H / (width * t);
    if (!std::isfinite(tension) || (least && !(tension < least->tension.value()))) continue;
    least = {way.at_support, way.a * m, way.l * m, way.width * m, {sides[0] * m, sides[1] * m}, width * m,
             Moment::from_value(M), Moment::from_value(of_others), Stress::from_value(tension)};
  }
  return least;
}

}  // namespace

Outcome<WallStripState> wall_strip_state(const WallStrip& strip) {
  if (!is_usable(strip)) return NotAssessed{"a number of the wall or slab that the insert bends is not usable", {}};
  std::optional<WallStripState> worst;
  for (const StripWay& way : ways_of(strip)) {
    const auto state = state_of(strip, way);
    if (!state) return NotAssessed{"the wall or slab has no width beside the insert that could carry its pull", {}};
    if (!worst || state->tension > worst->tension) worst = state;
  }
  return *worst;
}

}  // namespace firstpick::demands
