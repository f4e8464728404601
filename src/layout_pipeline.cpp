#include "layout_pipeline.hpp"

#include <algorithm>

#include "fingerprint.hpp"
#include "layout/find_layout.hpp"
#include "layout/judged_layout.hpp"
#include "layout/placement.hpp"
#include "pipeline.hpp"
#include "plan/read_plan.hpp"
#include "plan/rewrite_picks.hpp"

namespace firstpick {

namespace {

using layout::Judged;
using layout::JudgedLayout;
using layout::Use;

constexpr const char* what_to_write =
    "write [layout] step = \"50 mm\", legs = \"keep-length\"; and for each axis on which picks may move [[layout.move]] "
    "inserts = [\"P1\", \"P2\"], along = \"x\", mirror = true (docs/layout.md)";

std::optional<Use> use_of(const layout::Merit& merit) {
  if (!merit.governs) return {};
  return Use{merit.governs->stage, merit.governs->rule, merit.governs->subject, merit.governs->use, merit.governs->result};
}

// The worst of a rule in a stage: barred, then the greatest use.
std::optional<Use> worst_of(const JudgedLayout& layout, std::size_t stage, std::string_view rule,
                            const layout::PositionRules& of_position) {
  const Judged* worst = nullptr;
  for (const Judged& finding : layout.findings) {
    if (finding.stage != stage || finding.rule != rule || !of_position.depends(finding)) continue;
    if (!worst || finding.is_barred() > worst->is_barred() ||
        (finding.is_barred() == worst->is_barred() && finding.use.value_or(-1.0) > worst->use.value_or(-1.0)))
      worst = &finding;
  }
  if (!worst) return {};
  return Use{stage, worst->rule, worst->subject, worst->use, worst->result};
}

layout::StageLine stage_line(const plan::Stage& stage, std::size_t index, const JudgedLayout& before,
                             const JudgedLayout& after, const layout::PositionRules& of_position) {
  layout::StageLine line{.kind = stage.kind, .rigging = stage.rigging, .strength = after.strengths.at(index)};
  for (const Judged& finding : after.findings) {
    if (finding.stage != index) continue;
    const bool is_told = std::ranges::any_of(line.not_mended, [&](const Judged& m) { return m.rule == finding.rule; });
    if ((finding.is_barred() || finding.result == checks::Result::fail) && !is_told) line.not_mended.push_back(finding);
    if (std::ranges::any_of(line.rules, [&](const layout::RuleUse& use) { return use.after.rule == finding.rule; })) continue;
    const auto was = worst_of(before, index, finding.rule, of_position), is = worst_of(after, index, finding.rule, of_position);
    if (was && is && (was->value || is->value)) line.rules.push_back({*was, *is});
  }
  std::ranges::stable_sort(line.rules, std::greater{}, [](const layout::RuleUse& use) {
    return use.after.value.value_or(1e9);  // without a number: first
  });
  return line;
}

void tell_changes(const plan::Plan& before, const plan::Plan& after, layout::LayoutReport& report) {
  for (std::size_t i = 0; i < before.inserts.size(); ++i)
    if (const Length by = norm(after.inserts.at(i).at - before.inserts[i].at); by > Length{})
      report.inserts.push_back({before.inserts[i].id, before.inserts[i].at, after.inserts[i].at, by});
  for (std::size_t r = 0; r < before.riggings.size(); ++r)
    for (std::size_t leg = 0; leg < before.riggings[r].legs.size(); ++leg) {
      const plan::Leg &was = before.riggings[r].legs[leg], &is = after.riggings.at(r).legs.at(leg);
      if (was.length && is.length && *was.length != *is.length)
        report.legs.push_back({before.riggings[r].id, was.to, *was.length, *is.length});
    }
}

}  // namespace

std::variant<layout::LayoutReport, std::vector<Diagnostic>> layout_of_plan(
    const std::string& file, std::string_view text, const std::string& rules, const tables::Tables& tables,
    const std::function<void(std::size_t)>& tell) {
  const auto read = plan::read_plan_with_layout(file, text, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return *faults;
  const auto& [plan, allowed] = std::get<plan::PlanWithLayout>(read);
  const auto chosen = chosen_rules(file, rules, plan, tables);
  if (const auto* fault = std::get_if<Diagnostic>(&chosen)) return std::vector{*fault};
  const tables::RuleSet& rule_set = *std::get<const tables::RuleSet*>(chosen);
  if (!allowed)
    return std::vector{Diagnostic{.file = file, .what = "the plan does not say what may move: it has no [layout]",
                                  .help = what_to_write}};
  const auto body_made = piece::make_body(plan);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&body_made)) return *faults;
  const auto& body = std::get<piece::Body>(body_made);
  const auto placement_made = layout::Placement::of(plan, *allowed, body);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&placement_made)) return *faults;
  const auto& placement = std::get<layout::Placement>(placement_made);

  const JudgedLayout before = layout::judged_layout(plan, body, rule_set, tables, nullptr);
  layout::LayoutSearch found = layout::find_layout(placement, body, before, rule_set, tables, tell);

  layout::LayoutReport report{.file = plan.file, .mark = plan.piece.mark, .title = plan.piece.title,
                              .revision = plan.piece.revision, .rules = rule_set.id,
                              .fingerprint = fingerprint_of(text, rule_set.id, tables), .units = plan.piece.units,
                              .drawn_is_allowed = found.drawn_is_allowed, .layouts_judged = found.judged,
                              .layouts_checked_in_full = found.checked_in_full, .text = std::string(text)};
  JudgedLayout after = before;
  if (found.places) {
    // What counts is the plan as it will be read, not as it was meant.
    auto written = plan::with_picks_of(file, text, plan, placement.placed(*found.places, true));
    if (const auto* fault = std::get_if<Diagnostic>(&written)) return std::vector{*fault};
    auto again = prepare_plan(file, std::get<std::string>(written), rules, tables);
    if (auto* faults = std::get_if<std::vector<Diagnostic>>(&again)) return std::move(*faults);
    const auto& [new_plan, new_body, same_rules] = std::get<PreparedPlan>(again);
    JudgedLayout judged = layout::judged_layout(new_plan, new_body, same_rules, tables, nullptr);
    found.rules_of_position.learn(before, judged);
    const bool is_better = found.rules_of_position.merit(judged).improves(found.rules_of_position.merit(before));
    const bool is_allowed = std::holds_alternative<piece::Body>(layout::allowed_body(placement, body, new_plan));
    if (is_allowed && (is_better || !found.drawn_is_allowed)) {
      report.moved = true;
      report.text = std::move(std::get<std::string>(written));
      tell_changes(plan, new_plan, report);
      after = std::move(judged);
    }
  }

  const layout::PositionRules& of_position = found.rules_of_position;
  const layout::Merit merit_before = of_position.merit(before), merit_after = of_position.merit(after);
  report.before = use_of(merit_before), report.after = use_of(merit_after);
  report.barred_before = merit_before.barred, report.barred_after = merit_after.barred;
  for (const Judged& finding : after.findings)
    if (finding.use && !of_position.depends(finding) &&
        (!report.not_of_position || *finding.use > *report.not_of_position->value))
      report.not_of_position = Use{finding.stage, finding.rule, finding.subject, finding.use, finding.result};
  for (std::size_t stage = 0; stage < plan.stages.size(); ++stage)
    report.stages.push_back(stage_line(plan.stages[stage], stage, before, after, of_position));

  report.verdict_before = before.verdict, report.verdict_after = after.verdict;
  return report;
}

}  // namespace firstpick
