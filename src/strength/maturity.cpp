// Maturity functions: the equivalent age t_e of concrete that cures at changing temperatures T.
//
//   t_e = sum rate(T_a) dt       T_a: mean of the readings at both ends of dt
//
//   nurse-saul     rate = max(T_a - T_0, 0) / (T_r - T_0)         M = sum max(T_a - T_0, 0) dt
//   arrhenius      rate = exp(-Q (1/T_a - 1/T_r))                 kelvin; Q: activation energy over R
//   freiesleben-hansen-pedersen   the same with Q = (E_w + E_s max(T_w - T_a, 0)) / R
//   en-1992-1-1    rate = exp(c - B / (Z + T_a))                  T_a in degC: (B.10)
//
// Source   nurse-saul, arrhenius: ASTM C1074 (from memory), constants of the calibration's own report.
//          freiesleben-hansen-pedersen, en-1992-1-1: tables/maturity.toml.
// Range    the clamp at the datum keeps maturity from falling. Arrhenius never stops, not even in ice: readings
//          at or below 0 degC are told by the caller.

#include "strength/maturity.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "units/print.hpp"

namespace firstpick::strength {

namespace {

using plan::MaturityFunction;

double kelvin(Temperature t) { return t.value(); }
double above_K(Temperature t, Temperature below) { return std::max(t.value() - below.value(), 0.0); }

double arrhenius_rate(double Q_K, Temperature t, Temperature reference) {
  return std::exp(-Q_K * (1.0 / kelvin(t) - 1.0 / kelvin(reference)));
}

double activation_K(const tables::MaturityConstants& c, Temperature t) {
  const double E_J_mol = c.activation_warm.value.value() +
                         c.activation_slope.value.value() * above_K(c.activation_threshold.value, t);
  return E_J_mol / c.gas_constant.value.value();
}

double en_rate(const tables::MaturityConstants& c, Temperature t) {
  const double T_degC = t.value() - 273.15;
  return std::exp(c.en_constant.value.value() - c.en_activation.value.value() / (c.en_zero.value.value() + T_degC));
}

// Between two readings, on the straight line between them.
Temperature temperature_at(const Reading& a, const Reading& b, long long seconds) {
  const double share = static_cast<double>(seconds - a.at.seconds) / static_cast<double>(b.at.seconds - a.at.seconds);
  return Temperature::from_value(a.temperature.value() + share * (b.temperature.value() - a.temperature.value()));
}

}  // namespace

Outcome<MaturityLaw> maturity_law(const plan::Calibration& calibration, const tables::MaturityConstants& constants) {
  if (!calibration.function) return NotAssessed{"the maturity function is not stated", "write function in [calibration]"};
  MaturityLaw law{.function = *calibration.function, .reference = constants.reference.value, .constants = constants};
  if (law.function == MaturityFunction::nurse_saul) {
    if (!calibration.datum)
      return NotAssessed{"the datum temperature of the calibration is not stated", "write datum in [calibration]"};
    law.datum = *calibration.datum;
    if (!is_finite(law.datum) || !(law.datum < law.reference))
      return NotAssessed{"the datum temperature is not below the reference temperature", "correct datum"};
  }
  if (law.function == MaturityFunction::arrhenius) {
    if (!calibration.activation_temperature)
      return NotAssessed{"the activation temperature of the calibration is not stated",
                         "write activation_temperature in [calibration]"};
    law.activation_temperature = *calibration.activation_temperature;
    if (!(kelvin(law.activation_temperature) > 0.0) || !is_finite(law.activation_temperature))
      return NotAssessed{"the activation temperature is not a usable number", "correct activation_temperature"};
    if (law.activation_temperature < constants.activation_low.value ||
        law.activation_temperature > constants.activation_high.value)
      return NotAssessed{fmt::format("the activation temperature {:g} K is outside {:g} to {:g} K",
                                     kelvin(law.activation_temperature), kelvin(constants.activation_low.value),
                                     kelvin(constants.activation_high.value)),
                         "it is the activation energy over the gas constant, in K: correct activation_temperature"};
  }
  return law;
}

MaturityLaw en_1992_1_1_law(const tables::MaturityConstants& constants) {
  return {.function = MaturityFunction::en_1992_1_1, .reference = constants.reference.value, .constants = constants};
}

Ratio rate(const MaturityLaw& law, Temperature temperature) {
  if (!(kelvin(temperature) > 0.0)) return Ratio{};
  switch (law.function) {
    case MaturityFunction::nurse_saul:
      return Ratio::from_value(above_K(temperature, law.datum) / above_K(law.reference, law.datum));
    case MaturityFunction::arrhenius:
      return Ratio::from_value(arrhenius_rate(kelvin(law.activation_temperature), temperature, law.reference));
    case MaturityFunction::freiesleben_hansen_pedersen:
      return Ratio::from_value(
          arrhenius_rate(activation_K(law.constants, temperature), temperature, law.reference));
    case MaturityFunction::en_1992_1_1: return Ratio::from_value(en_rate(law.constants, temperature));
  }
  return Ratio{};
}

Duration equivalent_age(const MaturityLaw& law, const std::vector<CuringInterval>& intervals) {
  Duration age{};
  for (const CuringInterval& each : intervals) age += rate(law, each.mean) * each.length;
  return age;
}

double temperature_time_degC_h(Temperature datum, const std::vector<CuringInterval>& intervals) {
  double M_degC_h = 0.0;
  for (const CuringInterval& each : intervals) M_degC_h += above_K(each.mean, datum) * in(hour, each.length);
  return M_degC_h;
}

std::vector<CuringInterval> curing_intervals(const TemperatureLog& log, const plan::Timestamp& cast,
                                             long long until_seconds) {
  std::vector<CuringInterval> intervals;
  for (std::size_t i = 1; i < log.readings.size(); ++i) {
    const Reading &a = log.readings[i - 1], &b = log.readings[i];
    const long long from = std::max(a.at.seconds, cast.seconds), to = std::min(b.at.seconds, until_seconds);
    if (!b.counts_from_before || from >= to) continue;
    const double mean_K = (temperature_at(a, b, from).value() + temperature_at(a, b, to).value()) / 2.0;
    intervals.push_back({Duration::from_value(static_cast<double>(to - from)), Temperature::from_value(mean_K)});
  }
  return intervals;
}

std::string words_for(const MaturityLaw& law) {
  switch (law.function) {
    case MaturityFunction::nurse_saul:
      return fmt::format("Nurse-Saul, datum {}", print(law.datum, UnitSystem::si));
    case MaturityFunction::arrhenius:
      return fmt::format("Arrhenius, activation energy over gas constant {:g} K", kelvin(law.activation_temperature));
    case MaturityFunction::freiesleben_hansen_pedersen:
      return "Arrhenius, activation energy by Freiesleben Hansen and Pedersen";
    case MaturityFunction::en_1992_1_1: return "temperature-adjusted age of EN 1992-1-1 (B.10)";
  }
  return "";
}

std::vector<Source> sources_of(const MaturityLaw& law) {
  const tables::MaturityConstants& c = law.constants;
  switch (law.function) {
    case MaturityFunction::freiesleben_hansen_pedersen:
      return {c.activation_warm.source, c.activation_slope.source, c.activation_threshold.source,
              c.gas_constant.source, c.reference.source};
    case MaturityFunction::en_1992_1_1:
      return {c.en_constant.source, c.en_activation.source, c.en_zero.source};
    default: return {c.reference.source};
  }
}

}  // namespace firstpick::strength
