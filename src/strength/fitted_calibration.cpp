// The calibration of a mix: its specimens at equivalent ages, and the curve through them.
//
//   t_e = rate(T_cure) t        S_cyl = c S
//
// Source   c: tables/specimens.toml. rate: maturity.cpp. Curve: strength_curve.cpp, curve_fit.cpp.
// Range    specimens cured at one temperature. A fit that no concrete can have is refused, not repaired.

#include <fmt/format.h>

#include "strength/maturity_estimate.hpp"
#include "strength/specimen.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

std::string parameters_of(const CurveFit& fit) {
  const auto names = parameter_names(fit.curve);
  const auto units = parameter_units(fit.curve);
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += fmt::format("{}{} = {:.5g}{}{}", i == 0 ? "" : ", ", names[i], fit.parameters[i],
                        units[i] == "1" ? "" : " ", units[i] == "1" ? "" : units[i]);
  return text;
}

}  // namespace

Outcome<FittedCalibration> fitted_calibration(const plan::Calibration& calibration,
                                              const std::vector<AgedStrength>& aged, const tables::Tables& tables,
                                              Trace& trace) {
  if (!tables.maturity) return NotAssessed{"the tables hold no maturity constants", {}};
  const auto law = maturity_law(calibration, *tables.maturity);
  if (const auto* gap = std::get_if<NotAssessed>(&law)) return *gap;
  if (!calibration.specimen || !calibration.cured_at || !calibration.curve)
    return NotAssessed{"specimen, curve or curing temperature of the calibration is not stated",
                       "write specimen, curve and cured_at in [calibration]"};
  const tables::MaturityConstants& limits = *tables.maturity;
  if (!(*calibration.cured_at >= limits.cured_low.value) || !(*calibration.cured_at <= limits.cured_high.value))
    return NotAssessed{fmt::format("cured_at is {}, outside {} to {}: no specimens of a calibration cure there",
                                   print(*calibration.cured_at, UnitSystem::si),
                                   print(limits.cured_low.value, UnitSystem::si),
                                   print(limits.cured_high.value, UnitSystem::si)),
                       "write the temperature of the calibration's specimens, with its right unit"};
  const auto conversion = to_cylinder(*calibration.specimen, tables);
  if (const auto* gap = std::get_if<NotAssessed>(&conversion)) return *gap;
  const auto& [c, source] = std::get<Sourced<Ratio>>(conversion);

  FittedCalibration fitted{.law = std::get<MaturityLaw>(law), .fit = {}, .data = {}};
  const Ratio pace = rate(fitted.law, *calibration.cured_at);
  for (const AgedStrength& each : aged) fitted.data.push_back({pace * each.age, c * each.strength});
  auto fit = least_squares(*calibration.curve, fitted.data);
  if (const auto* gap = std::get_if<NotAssessed>(&fit)) return *gap;
  fitted.fit = std::get<CurveFit>(std::move(fit));
  if (const std::string why = non_physical(fitted.fit); !why.empty())
    return NotAssessed{fmt::format("the calibration of mix {} is no concrete: {} ({})", calibration.mix, why,
                                   parameters_of(fitted.fit)),
                       "fit another curve, or test more ages of this mix"};
  trace.add([&, &source = source] {
    Step step{.words = fmt::format("standard deviation of the calibration of mix {} about S = {}: {}",
                                   calibration.mix, equation_of(fitted.fit.curve), parameters_of(fitted.fit)),
              .result = {"s_fit", in(MPa, fitted.fit.deviation), "MPa"},
              .sources = sources_of(fitted.law)};
    step.sources.push_back(source);
    return step;
  });
  return fitted;
}

}  // namespace firstpick::strength
