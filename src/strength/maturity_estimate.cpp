// Strength from maturity, its validation, and what of it may count.
//
//   S_est = S(t_e)            d = S_est / S_companion - 1, |d| <= d_S           S_credit = S_est - S_margin
//
// Source   S_margin, d_S and whether maturity counts at all: the rule set. t_e: maturity.cpp. S: the calibration.
// Range    equivalent ages of the calibration's specimens; above them the strength of the oldest. Never past the
//          last reading. Time in doubt counts for nothing, and a log with doubts carries no lift.

#include "strength/maturity_estimate.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "strength/break_statistics.hpp"
#include "strength/specimen.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

constexpr Temperature freezing = Temperature::from_value(273.15);  // of water: 0 degC

std::optional<NotAssessed> fault_of_cast(const std::optional<plan::Timestamp>& cast, const TemperatureLog& log) {
  if (!cast)
    return NotAssessed{"when the concrete of the log was placed is not stated", "write cast in [temperature_log]"};
  if (!cast->has_offset)
    return NotAssessed{"the time of the pour has no zone, and the log has one",
                       "write cast with its offset, as 2026-03-02T16:30:00-05:00"};
  if (!(log.readings.back().at.seconds > cast->seconds))
    return NotAssessed{fmt::format("the log ends {}, before the pour {}", log.readings.back().at.text, cast->text),
                       "correct cast, or name the log of this pour"};
  return {};
}

template <class Predicate>
const Reading* first_reading(const TemperatureLog& log, long long from_seconds, Predicate is_so) {
  for (const Reading& reading : log.readings)
    if (reading.at.seconds >= from_seconds && is_so(reading)) return &reading;
  return nullptr;
}

const Reading* first_frozen(const TemperatureLog& log, long long from_seconds) {
  return first_reading(log, from_seconds, [](const Reading& r) { return r.temperature <= freezing; });
}

const Reading* first_hot(const TemperatureLog& log, long long from_seconds, const tables::MaturityConstants& limits) {
  return first_reading(log, from_seconds,
                       [&](const Reading& r) { return r.temperature > limits.peak.value; });
}

// The estimate and nothing recorded: for the times of companions.
Outcome<MaturityEstimate> estimate_at(const FittedCalibration& calibration, const TemperatureLog& log,
                                      const std::optional<plan::Timestamp>& cast, long long at_seconds) {
  if (const auto fault = fault_of_cast(cast, log)) return *fault;
  const auto last = std::ranges::find_if(log.readings.rbegin(), log.readings.rend(),
                                         [&](const Reading& r) { return r.at.seconds <= at_seconds; });
  if (last == log.readings.rend() || !(last->at.seconds > cast->seconds))
    return NotAssessed{"there is no reading between the pour and the time that is asked for", {}};
  const auto intervals = curing_intervals(log, *cast, std::min(at_seconds, log.readings.back().at.seconds));
  MaturityEstimate estimate{.cast_seconds = cast->seconds,
                            .equivalent_age = equivalent_age(calibration.law, intervals),
                            .until = last->at};
  if (calibration.law.function == plan::MaturityFunction::nurse_saul)
    estimate.temperature_time_degC_h = temperature_time_degC_h(calibration.law.datum, intervals);
  const CurveFit& fit = calibration.fit;
  if (!(estimate.equivalent_age >= fit.youngest))
    return NotAssessed{fmt::format("the equivalent age of {} is below that of the youngest specimen of the "
                                   "calibration, {}",
                                   print(estimate.equivalent_age, UnitSystem::si, Rounding::down),
                                   print(fit.youngest, UnitSystem::si, Rounding::up)),
                       "wait, or test younger specimens of this mix"};
  estimate.at_oldest = estimate.equivalent_age > fit.oldest;
  estimate.strength = strength_on(fit, estimate.at_oldest ? fit.oldest : estimate.equivalent_age);
  return estimate;
}

}  // namespace

Outcome<MaturityEstimate> maturity_estimate(const FittedCalibration& calibration, const TemperatureLog& log,
                                            const std::optional<plan::Timestamp>& cast, long long at_seconds,
                                            const tables::Tables& tables, Trace& trace) {
  if (!tables.maturity) return NotAssessed{"the tables hold no maturity constants", {}};
  const auto found = estimate_at(calibration, log, cast, at_seconds);
  if (const auto* estimate = std::get_if<MaturityEstimate>(&found)) {
    trace.add([&] {
      return Step{.words = fmt::format("equivalent age at {}, {}", estimate->until.text, words_for(calibration.law)),
                  .result = {"t_e", in(day, estimate->equivalent_age), "d"},
                  .sources = sources_of(calibration.law)};
    });
    trace.add([&] {
      return Step{.words = fmt::format("strength from maturity, S = {}, not past the oldest specimen",
                                       equation_of(calibration.fit.curve)),
                  .result = {"S_est", in(MPa, estimate->strength), "MPa"},
                  .clause = "the calibration"};
    });
  }
  return found;
}

Outcome<CompanionCheck> companion_check(const plan::Companion& companion, const FittedCalibration& calibration,
                                        const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                        const tables::RuleSet& rules, const tables::Tables& tables) {
  if (!companion.tested || !companion.specimen || !companion.cure)
    return NotAssessed{"a companion test does not state its time, specimen or cure",
                       "write tested, specimen and cure in [[calibration.companion]]"};
  if (*companion.cure == plan::Cure::standard)
    return NotAssessed{"standard-cured companions do not validate: they did not cure with the piece",
                       "test companions cured with the piece"};
  if (!companion.tested->has_offset)
    return NotAssessed{"the time of a companion test has no zone", "write tested with its offset"};
  if (!(static_cast<double>(companion.results.size()) >= rules.minimum_results.value.value()))
    return NotAssessed{fmt::format("{} of the {:g} companion results that the rule set asks for",
                                   companion.results.size(), rules.minimum_results.value.value()),
                       "test more companions"};
  if (companion.tested->seconds > log.readings.back().at.seconds)
    return NotAssessed{fmt::format("the companions were broken {}, after the last reading", companion.tested->text),
                       "read the log out again"};
  const auto statistics = break_statistics(companion.results);
  if (const auto* gap = std::get_if<NotAssessed>(&statistics)) return *gap;
  const auto conversion = to_cylinder(*companion.specimen, tables);
  if (const auto* gap = std::get_if<NotAssessed>(&conversion)) return *gap;
  const auto estimate = estimate_at(calibration, log, cast, companion.tested->seconds);
  if (const auto* gap = std::get_if<NotAssessed>(&estimate)) return *gap;

  CompanionCheck check{.tested = companion.tested->text,
                       .since_cast = Duration::from_value(static_cast<double>(
                           companion.tested->seconds - std::get<MaturityEstimate>(estimate).cast_seconds)),
                       .measured = std::get<Sourced<Ratio>>(conversion).value * std::get<BreakStatistics>(statistics).mean,
                       .estimated = std::get<MaturityEstimate>(estimate).strength};
  check.difference = check.estimated / check.measured - Ratio{1.0};
  check.within = std::abs(check.difference.value()) <= rules.maturity_difference.value.value();
  return check;
}

Outcome<Stress> creditable_strength(const Outcome<MaturityEstimate>& estimate, const TemperatureLog& log,
                                    const std::vector<Outcome<CompanionCheck>>& companions,
                                    const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace) {
  if (rules.maturity.value != tables::MaturityUse::validated_with_margin)
    return NotAssessed{"the rule set takes no strength from maturity alone", "break field-cured specimens"};
  if (!tables.maturity) return NotAssessed{"the tables hold no maturity constants", {}};
  if (const auto* gap = std::get_if<NotAssessed>(&estimate)) return *gap;
  if (!log.doubts.empty())
    return NotAssessed{fmt::format("the temperature log is in doubt: {}", log.doubts.front().what),
                       "break field-cured specimens"};
  const long long from = std::get<MaturityEstimate>(estimate).cast_seconds;
  if (first_frozen(log, from))
    return NotAssessed{"the concrete was at or below 0 degC", "break field-cured specimens"};
  if (first_hot(log, from, *tables.maturity))
    return NotAssessed{fmt::format("the concrete was hotter than {}",
                                   print(tables.maturity->peak.value, UnitSystem::si)),
                       "break field-cured specimens"};
  if (companions.empty())
    return NotAssessed{"no companion specimens of this pour validate the calibration",
                       "break companions and write [[calibration.companion]]"};
  for (const auto& companion : companions) {
    if (const auto* gap = std::get_if<NotAssessed>(&companion)) return *gap;
    const auto& check = std::get<CompanionCheck>(companion);
    if (!check.within)
      return NotAssessed{fmt::format("the companions of {} differ from the estimate by {} %, more than {:g} %",
                                     check.tested,
                                     print_number(100.0 * std::abs(check.difference.value()), 3, Rounding::up),
                                     100.0 * rules.maturity_difference.value.value()),
                         "break field-cured specimens, and calibrate this concrete anew"};
  }
  const Stress shown = std::get<MaturityEstimate>(estimate).strength;
  const Stress credited = shown - rules.maturity_margin.value;
  if (!(credited > Stress{}) || !is_finite(credited))
    return NotAssessed{"the strength from maturity does not exceed its margin", "let the concrete gain strength"};
  trace.add([&] {
    return Step{.words = "strength that maturity may count for",
                .result = {"S_credit", in(MPa, credited), "MPa"},
                .formula = "S_est - S_margin",
                .given = {{"S_est", in(MPa, shown), "MPa"}, {"S_margin", in(MPa, rules.maturity_margin.value), "MPa"}},
                .sources = {rules.maturity.source, rules.maturity_margin.source, rules.maturity_difference.source,
                            tables.maturity->peak.source}};
  });
  return credited;
}

std::vector<std::string> remarks_on(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                    const tables::MaturityConstants& limits) {
  std::vector<std::string> remarks;
  if (cast && cast->has_offset) {
    const auto late = Duration::from_value(static_cast<double>(log.readings.front().at.seconds - cast->seconds));
    if (late > limits.longest_gap.value)
      remarks.push_back(fmt::format("the log starts {} after the pour: that time counts for nothing",
                                    print(late, UnitSystem::si)));
  }
  const long long from = cast && cast->has_offset ? cast->seconds : log.readings.front().at.seconds;
  if (const Reading* frozen = first_frozen(log, from))
    remarks.push_back(fmt::format("the concrete was at or below 0 degC from {} on: it may have frozen, and maturity "
                                  "does not see that",
                                  frozen->at.text));
  if (const Reading* hot = first_hot(log, from, limits))
    remarks.push_back(fmt::format("the concrete was hotter than {} from {} on: it ends weaker than maturity says",
                                  print(limits.peak.value, UnitSystem::si), hot->at.text));
  return remarks;
}

}  // namespace firstpick::strength
