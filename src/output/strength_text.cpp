#include "output/strength_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

namespace {

using checks::Result;
using checks::StrengthReport;
using checks::Verdict;

constexpr const char* first_margin = "  ";

std::string answer_words(Verdict verdict, bool colour) {
  const std::string words = verdict == Verdict::go     ? "(+) STRENGTH REACHED"
                            : verdict == Verdict::hold ? "(?) HOLD: STRENGTH NOT SHOWN"
                                                       : "(x) BELOW THE STRENGTH NEEDED";
  if (!colour) return words;
  const int code = verdict == Verdict::go ? 32 : verdict == Verdict::hold ? 33 : 31;
  return fmt::format("\x1b[1;{}m{}\x1b[0m", code, words);
}

std::string line(const std::string& text, const TerminalStyle& style) {
  return paragraph(first_margin, "    ", printable(text), style.width);
}

std::string item(const std::string& text, const TerminalStyle& style) {
  return paragraph("  - ", "    ", printable(text), style.width);
}

std::string list(const std::string& title, const std::vector<std::string>& items, const TerminalStyle& style) {
  if (items.empty()) return {};
  std::string out = "\n" + title + "\n";
  for (const std::string& each : items) out += item(each, style);
  return out;
}

std::string needed_lines(const StrengthReport& report, const TerminalStyle& style) {
  std::string out;
  for (const checks::StrengthNeeded& each : report.needed) {
    const char* mark = each.result == Result::pass ? "+" : each.result == Result::fail ? "x" : "?";
    std::string text = each.what + ": ";
    if (each.required) text += "needs " + print(*each.required, report.units, Rounding::up);
    if (each.credited) {
      std::string has = print(*each.credited, report.units, Rounding::down);
      if (each.required && each.result == Result::fail && has == print(*each.required, report.units, Rounding::up))
        has = print_apart(*each.credited, *each.required, report.units);
      text += fmt::format("{}has {} by {}", each.required ? ", " : "", has, each.rests_on);
    }
    if (!each.why.empty()) text += (each.required || each.credited ? ": " : "") + each.why;
    out += paragraph(fmt::format("  {} ", mark), "    ", printable(text), style.width);
    if (!each.remedy.empty()) out += paragraph("    > ", "      ", printable(each.remedy), style.width);
  }
  if (report.needed.empty()) out += line("? no strength is needed by this file: write [required]", style);
  return out;
}

std::string specimen_lines(const StrengthReport& report, const TerminalStyle& style) {
  std::string out = "\nSpecimens\n" + line(report.basis, style);
  if (!report.broken) return out;
  std::string results;
  for (std::size_t i = 0; i < report.broken->results.size(); ++i) {
    const bool told = !report.broken->wide.empty() && i == report.broken->of.farthest;
    results += fmt::format("{}{}{}", i == 0 ? "" : ", ", print(report.broken->results[i], report.units),
                           told ? " (farthest off)" : "");
  }
  out += line(fmt::format("results {}; mean {}, range {} % of it", results,
                          print(report.broken->of.mean, report.units),
                          print_number(100.0 * report.broken->of.relative_range.value(), 3)),
              style);
  if (report.usable)
    out += line(fmt::format("usable as cylinder strength: {}", print(*report.usable, report.units, Rounding::down)),
                style);
  return out;
}

std::string calibration_lines(const StrengthReport& report, const TerminalStyle& style) {
  if (report.mix.empty()) return {};
  std::string out = fmt::format("\nCalibration of mix {}\n", printable(report.mix));
  if (!report.calibration) return out + line("none: " + report.why_no_calibration, style);
  const strength::CurveFit& fit = report.calibration->fit;
  const auto names = strength::parameter_names(fit.curve);
  const auto units = strength::parameter_units(fit.curve);
  out += line(fmt::format("S = {}, t in days", strength::equation_of(fit.curve)), style);
  std::string parameters;
  for (std::size_t i = 0; i < names.size(); ++i)
    parameters += fmt::format("{}{} = {} +- {}{}{}", i == 0 ? "" : ", ", names[i], print_number(fit.parameters[i], 5),
                              print_number(std::sqrt(fit.covariance[i][i]), 2), units[i] == "1" ? "" : " ",
                              units[i] == "1" ? "" : units[i]);
  out += line(parameters, style);
  std::string residuals;
  for (const Stress& residual : fit.residuals)
    residuals += (residuals.empty() ? "" : ", ") + (residual == Stress{} ? "0" : print(residual, report.units));
  out += line(fmt::format("measured less fitted: {}; standard deviation {}", residuals,
                          fit.deviation == Stress{} ? "0" : print(fit.deviation, report.units, Rounding::up)),
              style);
  out += line(fmt::format("equivalent ages {} to {}", print(fit.youngest, report.units), print(fit.oldest, report.units)),
              style);
  return out;
}

std::string sparklines(const StrengthReport& report, const checks::MaturityPart& part, std::size_t columns) {
  if (part.points.size() < 2) return {};
  std::vector<double> temperatures_K, ages_h, strengths_MPa;
  for (const checks::MaturityPoint& p : part.points) {
    temperatures_K.push_back(p.temperature.value());
    ages_h.push_back(in(hour, p.equivalent_age));
    strengths_MPa.push_back(p.strength ? in(MPa, *p.strength) : 0.0);
  }
  const auto [coldest, hottest] = std::ranges::minmax(temperatures_K);
  std::string out = fmt::format("  temperature     {} {} {}\n", print(Temperature::from_value(coldest), report.units),
                                sparkline_of(temperatures_K, coldest, hottest, columns),
                                print(Temperature::from_value(hottest), report.units));
  out += fmt::format("  equivalent age  0 {} {}\n", sparkline_of(ages_h, 0.0, ages_h.back(), columns),
                     print(part.points.back().equivalent_age, report.units, Rounding::down));
  const double most_MPa = *std::ranges::max_element(strengths_MPa);
  if (!(most_MPa > 0.0)) return out;  // no estimate
  std::optional<Stress> needed;
  for (const checks::StrengthNeeded& each : report.needed)
    if (each.required && (!needed || *each.required > *needed)) needed = each.required;
  const double needed_MPa = needed ? in(MPa, *needed) : std::numeric_limits<double>::infinity();
  out += fmt::format("  estimate        0 {} {}", sparkline_of(strengths_MPa, 0.0, needed ? std::max(most_MPa, needed_MPa) : most_MPa,
                                                            columns, needed_MPa),
                     print(most_MPa * MPa, report.units, Rounding::down));
  if (needed)
    out += fmt::format("; needed {}{}", print(*needed, report.units, Rounding::up),
                       most_MPa >= needed_MPa ? ", from the bar on" : ", not there");
  return out + "\n";
}

std::string maturity_lines(const StrengthReport& report, const TerminalStyle& style, bool sparkline) {
  if (!report.maturity) return {};
  const checks::MaturityPart& part = *report.maturity;
  std::string out = fmt::format("\nMaturity, sensor {}\n", printable(part.sensor)) + line(part.law, style);
  if (part.equivalent_age) {
    std::string text = fmt::format("equivalent age {} at {}", print(*part.equivalent_age, report.units, Rounding::down),
                                   part.last_reading);
    if (part.temperature_time_degC_h)
      text += fmt::format("; temperature-time factor {} degC h",
                          print_number(*part.temperature_time_degC_h, 4, Rounding::down));
    out += line(text, style);
  }
  if (part.estimate)
    out += line(fmt::format("estimated strength {}", print(*part.estimate, report.units, Rounding::down)), style);
  else out += line("no estimate: " + part.why_no_estimate, style);
  for (const auto& companion : part.companions) {
    if (const auto* gap = std::get_if<NotAssessed>(&companion)) {
      out += item("companions: " + gap->why, style);
      continue;
    }
    const auto& check = std::get<strength::CompanionCheck>(companion);
    out += item(fmt::format("companions of {}: {} measured, {} estimated, {:+.1f} %: {}", check.tested,
                            print(check.measured, report.units), print(check.estimated, report.units),
                            100.0 * check.difference.value(), check.within ? "within the limit" : "too far apart"),
                style);
  }
  if (part.credited)
    out += line(fmt::format("counts for {}", print(*part.credited, report.units, Rounding::down)), style);
  else if (part.estimate) out += line("counts for nothing: " + part.why_not_credited, style);
  if (sparkline) out += sparklines(report, part, style.width > 50 ? style.width - 42 : 10);
  return out;
}

std::string prediction_lines(const StrengthReport& report, const TerminalStyle& style) {
  if (!report.prediction) return {};
  const checks::Prediction& p = *report.prediction;
  std::string out = "\nPrediction, for planning only: never a reason to lift\n";
  if (!p.age) return out + line(fmt::format("none: {}", p.why_not), style);
  const auto age = [&](const std::optional<Duration>& q) {
    return q ? print(*q, report.units, Rounding::up) : std::string("never, on this curve");
  };
  out += line(fmt::format("strength for {} by the curve '{}': at an age of {} at 20 degC", p.needed_for, p.curve,
                          age(p.age->by_curve)),
              style);
  out += line(fmt::format("measured mixes at {}: {} if as fast as the fastest, {} if like the middle, {} if as slow as "
                          "the slowest twentieth{}",
                          print(p.age->band_age, report.units), age(p.age->fast), age(p.age->middle),
                          age(p.age->slow),
                          p.age->below_band ? "; younger concrete is not in the data" : ""),
              style);
  if (!p.earliest.empty())
    out += line(fmt::format("on the clock: {}; fastest {}, slowest {}", p.earliest, p.fast, p.slow), style);
  return out;
}

std::string season_lines(const StrengthReport& report, const TerminalStyle& style) {
  if (!report.season)
    return report.why_no_acceptance.empty() ? "" : "\nSeason\n" + line("none: " + report.why_no_acceptance, style);
  const strength::Acceptance& s = *report.season;
  std::string out = fmt::format("\nSeason: {}\n", s.accepted ? "accepted" : "not accepted");
  std::string text = fmt::format("{} tests, specified {}, mean {}", s.tests.size(), print(s.specified, report.units),
                                 print(s.mean, report.units));
  if (s.deviation) text += fmt::format(", standard deviation {}", print(*s.deviation, report.units));
  if (s.within_test) text += fmt::format(", within tests {}", print(*s.within_test, report.units));
  out += line(text, style);
  for (const strength::JudgedTest& test : s.tests) {
    if (test.run_fails)
      out += item(fmt::format("test {}: the mean of the run that ends with it is {}, below {}", test.name,
                              print_apart(*test.mean_of_run, s.specified, report.units),
                              print(s.specified, report.units)),
                  style);
    if (test.single_fails)
      out += item(fmt::format("test {}: {} is below {}", test.name,
                              print_apart(test.mean, s.least_single, report.units),
                              print(s.least_single, report.units)),
                  style);
  }
  return out + line("standard-cured tests judge the mix, never a lift", style);
}

std::vector<std::string> doubts_of(const StrengthReport& report) {
  std::vector<std::string> texts;
  for (const Diagnostic& doubt : report.doubts)
    texts.push_back(fmt::format("{}:{}:{}: {}", doubt.file, doubt.place.line, doubt.place.column, doubt.what));
  return texts;
}

}  // namespace

std::string sparkline_of(const std::vector<double>& values, double low, double high, std::size_t columns,
                         double needed) {
  static constexpr std::array<const char*, 8> blocks = {"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"};
  if (values.size() < 2 || columns < 2) return {};
  const std::size_t shown = std::min(columns, values.size());
  std::string out;
  bool reached = false;
  for (std::size_t i = 0; i < shown; ++i) {
    const double v = values[i * (values.size() - 1) / (shown - 1)];
    if (!reached && v >= needed) {
      reached = true;
      out += "|";
    }
    const double share = high > low ? std::clamp((v - low) / (high - low), 0.0, 1.0) : 0.0;
    out += blocks[std::min<std::size_t>(7, static_cast<std::size_t>(share * 8.0))];
  }
  return out;
}

std::string strength_text(const StrengthReport& report, const TerminalStyle& style, bool sparkline) {
  std::string out = answer_words(report.verdict, style.colour) + "\n";
  out += paragraph("    ", "    ",
                   fmt::format("{}{}; rules {}; asked {}; fingerprint {}",
                               report.mark.empty() ? "" : printable(report.mark) + "; ", printable(report.file),
                               printable(report.rules), report.asked_at, report.fingerprint.substr(0, 16)),
                   style.width);
  out += "\nNeeded\n" + needed_lines(report, style) + specimen_lines(report, style);
  out += calibration_lines(report, style) + maturity_lines(report, style, sparkline);
  out += prediction_lines(report, style) + season_lines(report, style);
  out += list("Temperature log in doubt", doubts_of(report), style);
  out += list("Noted", report.notes, style);
  if (style.steps) out += steps(report.trace, style.width);
  out += list("Rests on", report.choices, style);
  std::vector<std::string> unconfirmed;
  for (const Source& s : report.unconfirmed)
    unconfirmed.push_back(fmt::format("{} = {}: {} ({})", s.id, s.value_text, s.what, citation(s)));
  std::vector<std::string> replaced;
  for (const std::string& id : report.overridden) replaced.push_back("the plant's own table replaces " + id);
  out += list("Replaced", replaced, style);
  out += list("From memory, to be confirmed by the engineer of record", unconfirmed, style);
  return out + list("Cautions", report.cautions, style);
}

}  // namespace firstpick::output
