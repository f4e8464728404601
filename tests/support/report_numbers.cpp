#include "support/report_numbers.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace firstpick::tests {

namespace {

std::string name_of(const checks::StageReport& stage, const checks::Finding& finding) {
  return fmt::format("{} {} {}", checks::word_for(stage.kind), finding.rule, finding.subject);
}

void add(Numbers& numbers, const std::string& name, const std::optional<double>& number) {
  if (number) numbers[name] = *number;
}

std::optional<double> si(const std::optional<checks::Figure>& figure) {
  return figure ? std::optional<double>(checks::si_number(*figure)) : std::optional<double>{};
}

}  // namespace

Numbers utilizations(const checks::Report& report) {
  Numbers numbers;
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& finding : stage.findings) add(numbers, name_of(stage, finding), finding.utilization);
  return numbers;
}

Numbers all_numbers(const checks::Report& report) {
  Numbers numbers{{"volume", in(m3, report.volume)}, {"mass", in(kg, report.mass)}};
  if (report.usable_strength) numbers["usable"] = in(MPa, *report.usable_strength);
  if (report.required_strength) numbers["required"] = in(MPa, *report.required_strength);
  for (const checks::StageReport& stage : report.stages) {
    const std::string kind(checks::word_for(stage.kind));
    if (stage.load) {
      numbers[kind + " weight"] = in(kN, stage.load->weight);
      numbers[kind + " adhesion"] = in(kN, stage.load->adhesion);
      numbers[kind + " total"] = in(kN, stage.load->total);
    }
    if (stage.hook) numbers[kind + " hook"] = in(kN, *stage.hook);
    if (stage.tilt) numbers[kind + " tilt"] = in(deg, *stage.tilt);
    for (const checks::LegReport& leg : stage.legs) {
      numbers[kind + " tension " + leg.to] = in(kN, leg.tension);
      numbers[kind + " angle " + leg.to] = in(deg, leg.angle_from_horizontal);
    }
    for (const checks::InsertReport& insert : stage.inserts) {
      numbers[kind + " insert tension " + insert.id] = in(kN, insert.tension);
      numbers[kind + " insert shear " + insert.id] = in(kN, insert.shear);
    }
    for (const checks::Finding& finding : stage.findings) {
      const std::string name = name_of(stage, finding);
      add(numbers, name + " demand", si(finding.demand));
      add(numbers, name + " nominal", si(finding.nominal));
      add(numbers, name + " capacity", si(finding.capacity));
      add(numbers, name + " utilization", finding.utilization);
    }
  }
  return numbers;
}

std::vector<std::string> outcomes(const checks::Report& report) {
  std::vector<std::string> lines;
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& finding : stage.findings)
      lines.push_back(fmt::format("{} {}", name_of(stage, finding), checks::word_for(finding.result)));
  return lines;
}

std::string difference(const Numbers& a, const Numbers& b, double relative) {
  for (const auto& [name, number] : a)
    if (!b.contains(name)) return fmt::format("'{}' is only in the first: {}", name, number);
  for (const auto& [name, number] : b) {
    const auto other = a.find(name);
    if (other == a.end()) return fmt::format("'{}' is only in the second: {}", name, number);
    const double off = std::abs(number - other->second);
    if (!(off <= relative * std::max({1.0, std::abs(number), std::abs(other->second)})))
      return fmt::format("'{}': {:.17g} and {:.17g}", name, other->second, number);
  }
  return {};
}

}  // namespace firstpick::tests
