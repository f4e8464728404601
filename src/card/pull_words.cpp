// DO NOT PULL BEYOND: the number that an operator holds against the crane's scale, and what it is made of.

#include <algorithm>

#include <fmt/format.h>

#include "card/content.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

using checks::CranePull;
using checks::PullsOnScale;
using checks::Report;
using checks::StageReport;

// Of each crane of the stage: the limit of a lift that hangs is everything on the hook, as the rule crane-overload has it;
// at rest, free of the form, one crane alone shows the grip less.
std::vector<CranePull> pulls_of(const StageReport& stage, const PullsOnScale& pulls) {
  if (stage.kind == plan::StageKind::turn) return pulls.cranes;
  std::vector<CranePull> all;
  for (const checks::CraneReport& crane : stage.cranes) {
    all.push_back({.id = crane.id});
    if (!crane.hook) continue;
    all.back().limits = {{{}, {}, *crane.hook}};
    if (stage.load && stage.cranes.size() == 1)
      all.back().reading = *crane.hook - (stage.load->crane_load - stage.load->weight - stage.load->attached);
  }
  return all;
}

// One number, or one for each band of angles: "14.9 kN to 40.0 deg", "27.3 kN to 90.0 deg".
std::vector<std::string> limits_of(const CranePull& crane, UnitSystem units) {
  std::vector<std::string> texts;
  for (const checks::PullBand& band : crane.limits) {
    texts.push_back(print(band.most, units, Rounding::down));
    if (crane.limits.size() > 1) texts.back() += " to " + print(band.to, units);
  }
  return texts;
}

std::string all_limits_of(const CranePull& crane, UnitSystem units) {
  std::string all;
  for (const std::string& text : limits_of(crane, units)) all += (all.empty() ? "" : ", ") + text;
  return all;
}

// What the scale shows at rest, where that is less than the limit. Rounded down as the limit is: two roundings of one
// load are not believed.
std::string readings_of(const std::vector<CranePull>& cranes, UnitSystem units) {
  std::string all;
  for (const CranePull& crane : cranes) {
    if (!crane.reading || crane.limits.empty()) continue;
    const std::string text = print(*crane.reading, units, Rounding::down);
    if (crane.limits.size() == 1 && text == all_limits_of(crane, units) && cranes.size() == 1) continue;
    all += fmt::format("{}{}{}", all.empty() ? "" : ", ", text,
                       cranes.size() > 1 ? " on " + inert_at_both_ends(crane.id, 20) : std::string());
  }
  return all;
}

std::string made_of(const plan::Plan& plan, const Report& report, std::size_t at) {
  const StageReport& stage = report.stages[at];
  if (!stage.load) return {};
  const auto up = [&](Force f) { return print(f, report.units, Rounding::up); };
  std::string text = "piece at most " + up(stage.load->weight);
  if (stage.load->attached > Force{}) text += ", form parts " + up(stage.load->attached);
  if (stage.load->adhesion > Force{}) text += ", grip of the form " + up(stage.load->adhesion);
  const auto rigging = rigging_of(plan, plan.stages[at]);
  if (rigging && rigging->weight) text += ", rigging " + up(*rigging->weight);
  for (const checks::CraneReport& lifting : stage.cranes) {
    const auto crane = std::ranges::find(plan.cranes, lifting.id, &plan::Crane::id);
    if (crane != plan.cranes.end() && crane->block) text += ", block " + up(*crane->block);
  }
  return text;
}

}  // namespace

// The load on the hook is told once: as a demand it would be rounded up, as a limit down, and a card with 6780 and 6779
// beside each other is not believed. One crane: its limit; two: each with its name, the first on a line of its own.
Fact pull_of(const plan::Plan& plan, const Report& report, std::size_t at, const PullsOnScale& pulls) {
  const StageReport& stage = report.stages[at];
  const std::string parts = made_of(plan, report, at);
  const std::vector<CranePull> cranes = pulls_of(stage, pulls);
  Fact fact{"DO NOT PULL BEYOND", "", "on the crane's scale, block included"};
  if (stage.kind != plan::StageKind::turn && !parts.empty())
    fact.note = "the load on the hook, " + fact.note + ": " + parts;
  const bool turns = stage.kind == plan::StageKind::turn;
  if (const std::string at_rest = readings_of(cranes, report.units); !at_rest.empty())
    fact.note += fmt::format(". {} the scale shows at most {}", turns ? "At rest" : "Hanging free", at_rest);
  else if (turns && is_pull_known(report, at, pulls))
    fact.note += ". At rest the scale shows no more than this";
  std::vector<std::string> values;
  for (const CranePull& crane : cranes) {
    if (crane.limits.empty()) continue;
    if (cranes.size() == 1)
      values = limits_of(crane, report.units);
    else
      values.push_back(all_limits_of(crane, report.units) + " on " + inert_at_both_ends(crane.id, 20));
  }
  fact.value = values.empty() ? "not known" : values.front();
  for (std::size_t i = 1; i < values.size(); ++i) fact.second += (i == 1 ? "" : ", ") + values[i];
  return fact;
}

std::string pull_limit(const Report& report, std::size_t at, const PullsOnScale& pulls) {
  const std::vector<CranePull> cranes = pulls_of(report.stages[at], pulls);
  std::string all;
  for (const CranePull& crane : cranes)
    if (!crane.limits.empty())
      all += fmt::format("{}{}{}", all.empty() ? "" : ", ", all_limits_of(crane, report.units),
                         cranes.size() > 1 ? " on " + inert_at_both_ends(crane.id, 20) : std::string());
  return all.empty() ? "not known" : all;
}

// A rule set of a plant's own may not ask for the load on the hook.
bool is_pull_known(const Report& report, std::size_t at, const PullsOnScale& pulls) {
  const std::vector<CranePull> cranes = pulls_of(report.stages[at], pulls);
  return !cranes.empty() &&
         std::ranges::none_of(cranes, [](const auto& crane) { return crane.limits.empty(); });
}

}  // namespace firstpick::card
