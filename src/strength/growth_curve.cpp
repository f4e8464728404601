// Code curves of strength against age.
//
//   EN 1992-1-1   beta_cc = exp(s (1 - sqrt(28 d / t)))          3.1.2(6)
//   ACI 209       f(t) / f_28 = t / (a + beta t)                 28 days do not give 1 exactly
//   band          share x r / r_curve      r: measured share of 28 days at the band's age, r_curve: the curve's
//
// Source   tables/growth-curves.toml: constants, and the shares that mixes of an open data set reached.
// Range    planning only. 110 of 122 measured mixes were weaker at 3 days than the curve of class N says, so a
//          code curve never carries a lift. The band is that of the nearest younger age in the data; before the
//          youngest it is that of the youngest, and says so.

#include "strength/growth_curve.hpp"

#include <cmath>

namespace firstpick::strength {

namespace {

constexpr double standard_age_d = 28.0;  // printed in the equations

Duration at(double t_d) { return t_d * day; }

std::vector<Source> sources_of(const tables::GrowthCurve& curve, const tables::GrowthBand& band) {
  std::vector<Source> sources;
  if (curve.en_s) sources.push_back(curve.en_s->source);
  if (curve.aci_a) sources.push_back(curve.aci_a->source);
  if (curve.aci_beta) sources.push_back(curve.aci_beta->source);
  for (const Source& source : {band.band_age.source, band.band_low.source, band.band_middle.source, band.band_high.source})
    sources.push_back(source);
  return sources;
}

}  // namespace

Ratio share_of_28_days(const tables::GrowthCurve& curve, Duration age) {
  const double t_d = in(day, age);
  if (!(t_d > 0.0)) return Ratio{};
  if (curve.en_s)
    return Ratio::from_value(std::exp(curve.en_s->value.value() * (1.0 - std::sqrt(standard_age_d / t_d))));
  if (!curve.aci_a || !curve.aci_beta) return Ratio{};
  return Ratio::from_value(t_d / (in(day, curve.aci_a->value) + curve.aci_beta->value.value() * t_d));
}

Outcome<Duration> age_for_share(const tables::GrowthCurve& curve, Ratio share) {
  const double r = share.value();
  double t_d = std::nan("");
  if (curve.en_s) {
    const double root = 1.0 - std::log(r) / curve.en_s->value.value();  // sqrt(28 d / t)
    if (root > 0.0) t_d = standard_age_d / (root * root);
  } else if (curve.aci_a && curve.aci_beta) {
    const double left = 1.0 - curve.aci_beta->value.value() * r;
    if (left > 0.0) t_d = in(day, curve.aci_a->value) * r / left;
  }
  if (!(r > 0.0) || !(t_d > 0.0) || !std::isfinite(t_d))
    return NotAssessed{"the growth curve never reaches this strength", "this mix is not the one for it"};
  return at(t_d);
}

Outcome<PredictedAge> predicted_age(const tables::GrowthCurve& curve, Stress strength, Stress at_28_days,
                                    const std::vector<tables::GrowthBand>& bands) {
  if (!(strength > Stress{}) || !is_finite(strength) || !(at_28_days > Stress{}) || !is_finite(at_28_days))
    return NotAssessed{"a strength of the prediction is not above zero", {}};
  if (bands.empty()) return NotAssessed{"the tables hold no measured growth to set beside the curve", {}};
  const Ratio share = strength / at_28_days;
  const auto age = age_for_share(curve, share);
  if (const auto* gap = std::get_if<NotAssessed>(&age)) return *gap;

  PredictedAge predicted{.by_curve = std::get<Duration>(age)};
  const tables::GrowthBand* band = &bands.front();
  for (const tables::GrowthBand& each : bands)
    if (each.band_age.value <= predicted.by_curve) band = &each;
  predicted.band_age = band->band_age.value;
  predicted.below_band = predicted.by_curve < band->band_age.value;
  predicted.sources = sources_of(curve, *band);

  const Ratio on_curve = share_of_28_days(curve, band->band_age.value);
  const auto age_if = [&](Ratio measured) -> std::optional<Duration> {
    const auto reached = age_for_share(curve, share * (on_curve / measured));
    return is_assessed(reached) ? std::optional(std::get<Duration>(reached)) : std::nullopt;
  };
  predicted.slow = age_if(band->band_low.value);
  predicted.middle = age_if(band->band_middle.value);
  predicted.fast = age_if(band->band_high.value);
  return predicted;
}

}  // namespace firstpick::strength
