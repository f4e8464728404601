// Strength from maturity, its validation, and what of it may count.
//
//   S_est = S(t_e)            d = S_est / S_companion - 1, |d| <= d_S           S_credit = S_est - S_margin
//
//   latest companions:  S_companion >= a_comp S_est, at most t_comp before the last reading
//   calibration:        s_fit <= r_fit S_est,  standard error of S_est <= e_fit S_est
//
// Source   S_margin, d_S, the other limits and whether maturity counts at all: the rule set. t_e: maturity.cpp. S and
//          its errors: the calibration. How far companions of one set may lie apart: tables/specimens.toml.
// Range    equivalent ages of the calibration's specimens; above them the strength of the oldest. Never past the
//          last reading. Time in doubt counts for nothing, and a log with doubts carries no lift.

#include "strength/maturity_estimate.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "strength/break_statistics.hpp"
#include "strength/log_doubt.hpp"
#include "strength/specimen.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

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
  const Duration age = estimate.at_oldest ? fit.oldest : estimate.equivalent_age;
  estimate.strength = strength_on(fit, age);
  estimate.scatter = fit.deviation;
  estimate.standard_error = standard_error_on(fit, age);
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

namespace {

// Of their own kind where the tables know how far those may lie apart; never more than the rule set's widest range.
std::optional<NotAssessed> too_far_apart(const BreakStatistics& of, const plan::Companion& companion,
                                         const tables::RuleSet& rules, const tables::Tables& tables) {
  Ratio most = rules.widest_range.value;
  const auto limit = range_limit(*companion.specimen, of.n, tables);
  if (const auto* known = std::get_if<Sourced<Ratio>>(&limit)) most = std::min(most, known->value);
  if (of.relative_range <= most) return {};
  return NotAssessed{fmt::format("the companions of {} lie {} % of their mean apart, more than {} %",
                                 companion.tested->text,
                                 print_number(100.0 * of.relative_range.value(), 3, Rounding::up),
                                 print_number(100.0 * most.value(), 3)),
                     "test other companions"};
}

}  // namespace

Outcome<CompanionCheck> companion_check(const plan::Companion& companion, const FittedCalibration& calibration,
                                        const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                        long long asked_seconds, const tables::RuleSet& rules,
                                        const tables::Tables& tables) {
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
  if (companion.tested->seconds > asked_seconds)
    return NotAssessed{fmt::format("the companions of {} are after the time of the question", companion.tested->text),
                       "correct tested, or ask again when they are broken"};
  if (companion.tested->seconds > log.readings.back().at.seconds)
    return NotAssessed{fmt::format("the companions were broken {}, after the last reading", companion.tested->text),
                       "read the log out again"};
  const auto statistics = break_statistics(companion.results);
  if (const auto* gap = std::get_if<NotAssessed>(&statistics)) return *gap;
  if (const auto fault = too_far_apart(std::get<BreakStatistics>(statistics), companion, rules, tables)) return *fault;
  const auto conversion = to_cylinder(*companion.specimen, tables);
  if (const auto* gap = std::get_if<NotAssessed>(&conversion)) return *gap;
  const auto estimate = estimate_at(calibration, log, cast, companion.tested->seconds);
  if (const auto* gap = std::get_if<NotAssessed>(&estimate)) return *gap;
  const long long age_s = companion.tested->seconds - std::get<MaturityEstimate>(estimate).cast_seconds;
  if (!(Duration::from_value(static_cast<double>(age_s)) >= rules.youngest_test.value))
    return NotAssessed{fmt::format("the companions of {} were younger than {}", companion.tested->text,
                                   print(rules.youngest_test.value, UnitSystem::si)),
                       "correct tested, or test other companions"};

  CompanionCheck check{.tested = companion.tested->text,
                       .since_cast = Duration::from_value(static_cast<double>(age_s)),
                       .measured = std::get<Sourced<Ratio>>(conversion).value * std::get<BreakStatistics>(statistics).mean,
                       .estimated = std::get<MaturityEstimate>(estimate).strength};
  check.difference = check.estimated / check.measured - Ratio{1.0};
  check.within = std::abs(check.difference.value()) <= rules.maturity_difference.value.value();
  return check;
}

namespace {

std::optional<NotAssessed> fault_of_latest(const std::vector<Outcome<CompanionCheck>>& companions,
                                           const MaturityEstimate& estimate, const tables::RuleSet& rules) {
  const CompanionCheck* latest = nullptr;
  for (const auto& companion : companions)
    if (const auto* check = std::get_if<CompanionCheck>(&companion))
      if (!latest || check->since_cast > latest->since_cast) latest = check;
  if (!latest) return NotAssessed{"no companions validate the calibration", {}};
  const Duration until = Duration::from_value(static_cast<double>(estimate.until.seconds - estimate.cast_seconds));
  const Duration ago = until - latest->since_cast;
  if (!(ago <= rules.companion_window.value))
    return NotAssessed{fmt::format("the latest companions were broken {} before the last reading, more than {}",
                                   print(ago, UnitSystem::si, Rounding::up),
                                   print(rules.companion_window.value, UnitSystem::si)),
                       "break companions again"};
  const Ratio share = latest->measured / estimate.strength, least = rules.companion_share.value;
  if (!(share >= least))
    return NotAssessed{fmt::format("the latest companions have {} % of the estimate: below {:g} % they do not "
                                   "validate it",
                                   print_number(100.0 * share.value(), 3, Rounding::down), 100.0 * least.value()),
                       "break companions again"};
  return {};
}

std::optional<NotAssessed> fault_of_fit(const MaturityEstimate& estimate, const tables::RuleSet& rules) {
  const auto told = [&](const char* what, Stress error, Ratio most) {
    return NotAssessed{fmt::format("{} is {} % of the estimate, more than {:g} %", what,
                                   print_number(100.0 * Ratio{error / estimate.strength}.value(), 3, Rounding::up),
                                   100.0 * most.value()),
                       "calibrate this mix anew, at more ages"};
  };
  if (!(estimate.scatter <= rules.fit_scatter.value * estimate.strength))
    return told("the standard deviation of the calibration", estimate.scatter, rules.fit_scatter.value);
  if (!(estimate.standard_error <= rules.fit_error.value * estimate.strength))
    return told("the standard error of the estimate", estimate.standard_error, rules.fit_error.value);
  return {};
}

}  // namespace

Outcome<Stress> creditable_strength(const Outcome<MaturityEstimate>& estimate, const TemperatureLog& log,
                                    const std::vector<Outcome<CompanionCheck>>& companions,
                                    const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace) {
  if (rules.maturity.value != tables::MaturityUse::validated_with_margin)
    return NotAssessed{"the rule set takes no strength from maturity alone", "break field-cured specimens"};
  if (!tables.maturity) return NotAssessed{"the tables hold no maturity constants", {}};
  if (const auto* gap = std::get_if<NotAssessed>(&estimate)) return *gap;
  const MaturityEstimate& estimated = std::get<MaturityEstimate>(estimate);
  const plan::Timestamp cast{.seconds = estimated.cast_seconds, .has_offset = true};
  if (const auto doubt = doubt_about(log, cast, *tables.maturity)) return *doubt;
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
  const Stress shown = estimated.strength;
  if (const auto colder = colder_beside(log, cast, estimated.until.seconds, *tables.maturity)) return *colder;
  if (const auto fault = fault_of_latest(companions, estimated, rules)) return *fault;
  if (const auto fault = fault_of_fit(estimated, rules)) return *fault;
  const Stress credited = shown - rules.maturity_margin.value;
  if (!(credited > Stress{}) || !is_finite(credited))
    return NotAssessed{"the strength from maturity does not exceed its margin", "let the concrete gain strength"};
  trace.add([&] {
    return Step{.words = "strength that maturity may count for",
                .result = {"S_credit", in(MPa, credited), "MPa"},
                .formula = "S_est - S_margin",
                .given = {{"S_est", in(MPa, shown), "MPa"}, {"S_margin", in(MPa, rules.maturity_margin.value), "MPa"}},
                .sources = {rules.maturity.source, rules.maturity_margin.source, rules.maturity_difference.source,
                            rules.companion_share.source, rules.companion_window.source, rules.fit_scatter.source,
                            rules.fit_error.source, tables.maturity->peak.source}};
  });
  return credited;
}

}  // namespace firstpick::strength
