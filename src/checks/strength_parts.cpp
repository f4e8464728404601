#include "checks/strength_parts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "strength/log_doubt.hpp"
#include "strength/moment_text.hpp"
#include "strength/specimen.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

std::optional<plan::Timestamp> cast_of(const StrengthQuestion& question) {
  if (question.log_file && question.log_file->cast) return question.log_file->cast;
  return question.concrete.evidence ? question.concrete.evidence->cast : std::nullopt;
}

// The time up to which the log counts: the question's, where it has a zone; never past the last reading.
long long until_of(const StrengthQuestion& question) {
  const long long last = question.log->readings.back().at.seconds;
  return question.asked_at.zoned ? std::min(last, question.asked_at.zoned->seconds) : last;
}

// Equivalent age and estimate at each reading: summed on the way, so that long logs stay quick.
std::vector<MaturityPoint> points_of(const StrengthQuestion& question, const plan::Timestamp& cast,
                                     const strength::MaturityLaw& law, const strength::CurveFit* fit) {
  std::vector<MaturityPoint> points;
  const strength::TemperatureLog& log = *question.log;
  const long long until = until_of(question);
  Duration age{};
  for (std::size_t i = 0; i < log.readings.size() && log.readings[i].at.seconds <= until; ++i) {
    if (log.readings[i].at.seconds < cast.seconds) continue;
    if (i > 0) {
      const strength::TemperatureLog two{.readings = {log.readings[i - 1], log.readings[i]}};
      age += strength::equivalent_age(law, strength::curing_intervals(two, cast, log.readings[i].at.seconds));
    }
    MaturityPoint point{Duration::from_value(static_cast<double>(log.readings[i].at.seconds - cast.seconds)),
                        log.readings[i].temperature, age, {}};
    if (fit && age >= fit->youngest && age <= fit->oldest) point.strength = strength::strength_on(*fit, age);
    points.push_back(point);
  }
  return points;
}

void tell_staleness(const StrengthQuestion& question, const tables::MaturityConstants& limits,
                    StrengthReport& report) {
  if (!question.asked_at.zoned) {
    report.notes.push_back("the time of the question has no zone: how old the last reading is cannot be told");
    return;
  }
  const long long since = question.asked_at.zoned->seconds - question.log->readings.back().at.seconds;
  const auto age = Duration::from_value(static_cast<double>(since));
  if (age > limits.longest_gap.value)
    report.notes.push_back(fmt::format("the last reading is {} old: nothing after it counts",
                                       print(age, UnitSystem::si, Rounding::up)));
  if (since < 0)
    report.notes.push_back(fmt::format("the log has readings after the time of the question, {}: they do not count",
                                       question.asked_at.zoned->text));
}

// Maturity up to now needs to know when that is, and a reading of now.
std::optional<NotAssessed> fault_of_time(const StrengthQuestion& question, const tables::MaturityConstants& limits) {
  if (!question.asked_at.zoned)
    return NotAssessed{"the time of the question has no zone, and the log has one",
                       "ask with its offset, as --now 2026-03-03T07:20:00-05:00"};
  const auto& readings = question.log->readings;
  const auto last = std::ranges::find_if(readings.rbegin(), readings.rend(), [&](const strength::Reading& r) {
    return r.at.seconds <= question.asked_at.zoned->seconds;
  });
  if (last == readings.rend()) return NotAssessed{"there is no reading before the time of the question", {}};
  const auto age = Duration::from_value(static_cast<double>(question.asked_at.zoned->seconds - last->at.seconds));
  if (age <= limits.longest_gap.value) return {};
  return NotAssessed{fmt::format("the last reading is {} old, more than {}", print(age, UnitSystem::si, Rounding::up),
                                 print(limits.longest_gap.value, UnitSystem::si)),
                     "read the log out again"};
}

void tell_unusual_datum(const strength::MaturityLaw& law, const tables::MaturityConstants& limits,
                        StrengthReport& report) {
  if (law.function != plan::MaturityFunction::nurse_saul) return;
  if (law.datum >= limits.datum_low.value && law.datum <= limits.datum_high.value) return;
  report.notes.push_back(fmt::format("the datum temperature {} lies outside {} to {}, the range of practice",
                                     print(law.datum, UnitSystem::si), print(limits.datum_low.value, UnitSystem::si),
                                     print(limits.datum_high.value, UnitSystem::si)));
}

void tell_estimate(const StrengthQuestion& question, const std::optional<plan::Timestamp>& cast,
                   const tables::RuleSet& rules, const tables::Tables& tables, MaturityPart& part,
                   Outcome<Stress>& credit, StrengthReport& report) {
  const auto& calibration = *report.calibration;
  const long long asked_s =
      question.asked_at.zoned ? question.asked_at.zoned->seconds : std::numeric_limits<long long>::max();
  const auto estimate =
      strength::maturity_estimate(calibration, *question.log, cast, until_of(question), tables, report.trace);
  for (const plan::Companion& companion : question.calibration->companions)
    part.companions.push_back(
        strength::companion_check(companion, calibration, *question.log, cast, asked_s, rules, tables));
  credit = strength::creditable_strength(estimate, *question.log, part.companions, rules, tables, report.trace);
  if (const auto fault = fault_of_time(question, *tables.maturity); fault && is_assessed(credit)) credit = *fault;
  if (const auto* found = std::get_if<strength::MaturityEstimate>(&estimate)) {
    part.equivalent_age = found->equivalent_age;
    part.temperature_time_degC_h = found->temperature_time_degC_h;
    part.estimate = found->strength;
    part.last_reading = found->until.text;
    if (found->at_oldest)
      report.notes.push_back("the concrete is older than every specimen of the calibration: the strength of the "
                             "oldest is taken");
  } else {
    part.why_no_estimate = std::get<NotAssessed>(estimate).why;
  }
}

// The whole minute at or after `wait`: later, never earlier. Nothing where that is more than ten years.
std::optional<long long> seconds_after(const plan::Timestamp& from, Duration wait) {
  const double wait_s = std::ceil(wait.value() / 60.0) * 60.0;
  constexpr double ten_years_s = 3650.0 * 86400.0;
  if (!(wait_s >= 0.0 && wait_s <= ten_years_s)) return {};
  return from.seconds + static_cast<long long>(wait_s);
}

// In the zone that the moment was written in.
std::string words_in_zone_of(const plan::Timestamp& zoned, long long seconds_utc) {
  return strength::words_for_moment(seconds_utc, static_cast<int>(zoned.offset_seconds / 60));
}

}  // namespace

void tell_specimens(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report) {
  if (!question.concrete.evidence) return;
  const plan::Evidence& evidence = *question.concrete.evidence;
  const auto statistics = strength::break_statistics(evidence.results);
  if (!is_assessed(statistics)) return;
  report.broken = BrokenSpecimens{evidence.results, std::get<strength::BreakStatistics>(statistics),
                                  strength::wide_range_text(evidence, tables)};
  if (evidence.cast && evidence.tested && evidence.cast->has_offset == evidence.tested->has_offset)
    report.broken->since_cast =
        Duration::from_value(static_cast<double>(evidence.tested->seconds - evidence.cast->seconds));
  if (evidence.specimen) {
    const auto conversion = strength::to_cylinder(*evidence.specimen, tables);
    if (const auto* c = std::get_if<Sourced<Ratio>>(&conversion))
      for (const Stress& result : evidence.results) report.broken->as_cylinders.push_back(c->value * result);
  }
  if (report.usable && !report.broken->wide.empty()) report.notes.push_back(report.broken->wide);
  if (!evidence.specimen) return;
  const auto limit = strength::range_limit(*evidence.specimen, evidence.results.size(), tables);
  if (const auto* known = std::get_if<Sourced<Ratio>>(&limit))
    report.trace.add([&] {
      return Step{.words = "range of the results over their mean; a wide range is told, no result is dropped",
                  .result = {"r", report.broken->of.relative_range.value(), "1"},
                  .formula = "(f_max - f_min) / m",
                  .given = {{"f_max", in(MPa, report.broken->of.highest), "MPa"},
                            {"f_min", in(MPa, report.broken->of.lowest), "MPa"},
                            {"m", in(MPa, report.broken->of.mean), "MPa"}},
                  .sources = {known->source}};
    });
}

Outcome<Stress> tell_maturity(const StrengthQuestion& question, const tables::RuleSet& rules,
                              const tables::Tables& tables, StrengthReport& report) {
  Outcome<Stress> credit = NotAssessed{"there is no temperature log", {}};
  if (question.calibration) {
    report.mix = question.calibration->mix;
    auto fitted = strength::fitted_calibration(*question.calibration, question.aged, tables, report.trace);
    if (auto* found = std::get_if<strength::FittedCalibration>(&fitted)) report.calibration = std::move(*found);
    else report.why_no_calibration = std::get<NotAssessed>(fitted).why;
  }
  if (!question.log || !tables.maturity) return credit;
  const tables::MaturityConstants& limits = *tables.maturity;
  const auto cast = cast_of(question);
  report.doubts = question.log->doubts;
  for (std::string& remark : strength::remarks_on(*question.log, cast, limits))
    report.notes.push_back(std::move(remark));
  tell_staleness(question, limits, report);
  if (const auto colder = strength::colder_beside(*question.log, cast, until_of(question), limits))
    report.notes.push_back(colder->why);

  MaturityPart part{.sensor = question.log->sensor, .last_reading = question.log->readings.back().at.text};
  const strength::MaturityLaw law =
      report.calibration ? report.calibration->law : strength::en_1992_1_1_law(limits);
  part.law = strength::words_for(law);
  tell_unusual_datum(law, limits, report);
  if (report.calibration) {
    tell_estimate(question, cast, rules, tables, part, credit, report);
  } else {
    part.why_no_estimate = report.why_no_calibration.empty() ? "there is no calibration of this mix"
                                                             : report.why_no_calibration;
    credit = NotAssessed{part.why_no_estimate, "calibrate the mix, or break field-cured specimens"};
  }
  if (const auto* gap = std::get_if<NotAssessed>(&credit)) part.why_not_credited = gap->why;
  else part.credited = std::get<Stress>(credit);
  if (cast && cast->has_offset)
    part.points = points_of(question, *cast, law, report.calibration ? &report.calibration->fit : nullptr);
  if (!part.equivalent_age && !part.points.empty()) part.equivalent_age = part.points.back().equivalent_age;
  report.maturity = std::move(part);
  return credit;
}

void tell_prediction(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report) {
  if (!question.growth) return;
  Prediction prediction{.curve = question.growth->curve};
  const StrengthNeeded* most = nullptr;
  for (const StrengthNeeded& each : report.needed)
    if (each.required && (!most || *each.required > *most->required)) most = &each;
  const auto curve = tables.growth_curves.find(question.growth->curve);
  if (!most || curve == tables.growth_curves.end() || !question.growth->strength_at_28_days) {
    prediction.why_not = "no needed strength, growth curve or strength at 28 days is known";
    report.prediction = std::move(prediction);
    return;
  }
  prediction.needed_for = most->what;
  const auto age = strength::predicted_age(curve->second, *most->required, *question.growth->strength_at_28_days,
                                           tables.growth_bands);
  if (const auto* gap = std::get_if<NotAssessed>(&age)) {
    prediction.why_not = gap->why;
    report.prediction = std::move(prediction);
    return;
  }
  prediction.age = std::get<strength::PredictedAge>(age);
  report.trace.add([&] {
    return Step{.words = "age at 20 degC at which the growth curve has the strength: a prediction",
                .result = {"t_curve", in(day, prediction.age->by_curve), "d"},
                .sources = prediction.age->sources};
  });

  const auto cast = cast_of(question);
  if (!cast || !cast->has_offset || !question.growth->temperature || !tables.maturity) {
    report.prediction = std::move(prediction);
    return;
  }
  const strength::MaturityLaw law = strength::en_1992_1_1_law(*tables.maturity);
  plan::Timestamp from = *cast;
  Duration adjusted{};
  if (question.log) {
    const long long until = until_of(question);
    adjusted = strength::equivalent_age(law, strength::curing_intervals(*question.log, *cast, until));
    if (until > cast->seconds) from.seconds = until;
    prediction.adjusted_now = adjusted;
  }
  const Ratio pace = strength::rate(law, *question.growth->temperature);
  const auto when = [&](const std::optional<Duration>& needed_age, std::optional<long long>& utc_s) -> std::string {
    utc_s.reset();
    if (!needed_age) return "never, at this growth";
    if (!(*needed_age > adjusted)) {
      utc_s = from.seconds;
      return "by now";
    }
    utc_s = seconds_after(from, (*needed_age - adjusted) / pace);
    return utc_s ? words_in_zone_of(*cast, *utc_s) : "not within ten years";
  };
  std::optional<long long> untold;
  prediction.earliest = when(prediction.age->by_curve, prediction.earliest_utc_s);
  prediction.slow = when(prediction.age->slow, prediction.slow_utc_s);
  prediction.fast = when(prediction.age->fast, untold);
  report.prediction = std::move(prediction);
}

void tell_season(const StrengthQuestion& question, const tables::Tables& tables, StrengthReport& report) {
  if (!question.season || !question.season->specified || !tables.acceptance) return;
  auto judged_tests = strength::acceptance(question.season_tests, *question.season->specified, *tables.acceptance);
  if (const auto* gap = std::get_if<NotAssessed>(&judged_tests)) {
    report.why_no_acceptance = gap->why;
    return;
  }
  report.season = std::get<strength::Acceptance>(std::move(judged_tests));
  const tables::AcceptanceLimits& limits = *tables.acceptance;
  const bool dropped = report.season->specified <= limits.drop_up_to.value;
  report.trace.add([&] {
    return Step{.words = "least strength that a single test of the season may have",
                .result = {"f_single", in(MPa, report.season->least_single), "MPa"},
                .clause = "ACI 318-14 26.12.3.1",
                .sources = {limits.run_length.source, limits.drop_up_to.source,
                            dropped ? limits.single_drop.source : limits.share_above.source}};
  });
  if (!report.season->within_test) return;
  const bool of_two = question.season_tests.front().results.size() == 2;
  report.trace.add([&] {
    return Step{.words = "standard deviation within the tests, from their ranges",
                .result = {"s_1", in(MPa, *report.season->within_test), "MPa"},
                .sources = {of_two ? limits.d2_of_two.source : limits.d2_of_three.source}};
  });
}

}  // namespace firstpick::checks
