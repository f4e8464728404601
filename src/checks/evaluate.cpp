#include "checks/evaluate.hpp"

#include <algorithm>
#include <exception>
#include <limits>

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/line_method.hpp"
#include "checks/lost_points.hpp"
#include "checks/piece_model.hpp"
#include "checks/rule.hpp"
#include "checks/standing_texts.hpp"
#include "checks/unconfirmed_values.hpp"
#include "checks/verdict.hpp"
#include "checks/worst_leg.hpp"
#include "plan/form_state.hpp"
#include "strength/evidence_age.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::checks {

namespace {

// With two cranes there is no one scale: each tells its own.
void tell_cranes(const StageFacts& facts, StageReport& report) {
  for (const LiftingCrane& crane : cranes_of(facts)) {
    report.cranes.push_back({crane.id, {}});
    if (const auto hook = crane_hook_load(facts, crane); is_assessed(hook))
      report.cranes.back().hook = std::get<Force>(hook);
  }
  if (report.cranes.size() != 1) return;
  report.hook = report.cranes.front().hook;
  if (plan::comes_out_of_form(facts.plan, facts.stage)) report.pull_not_to_exceed = report.hook;
}

void tell_legs(const StageFacts& facts, StageReport& report) {
  if (!facts.rigging) return;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg)
    if (const auto worst = most_tension(facts.gear_situations, leg); is_assessed(worst)) {
      const auto& w = std::get<WorstLeg>(worst);
      report.legs.push_back({facts.rigging->legs[leg].to, w.tension, w.angle_from_horizontal, w.situation});
    }
}

void tell_inserts(const StageFacts& facts, StageReport& report) {
  const auto* situations = std::get_if<std::vector<InsertSituation>>(&facts.insert_situations);
  if (!situations) return;
  for (std::size_t insert = 0; insert < facts.plan.inserts.size(); ++insert) {
    InsertReport told{.id = facts.plan.inserts[insert].id};
    for (const InsertSituation& situation : *situations) {
      told.tension = std::max(told.tension, situation.forces.at(insert).tension);
      told.shear = std::max(told.shear, situation.forces.at(insert).shear);
    }
    report.inserts.push_back(std::move(told));
  }
}

void tell_turn(const StageFacts& facts, StageReport& report) {
  const auto* sweep = facts.turning ? std::get_if<TurnSweep>(&*facts.turning) : nullptr;
  const auto* load = std::get_if<loads::StageLoad>(&facts.load);
  if (!sweep || !load) return;
  const Force total = load->gear_loads.front().total;
  TurnReport told{.from = facts.stage.turn->from,
                  .to = facts.stage.turn->to,
                  .pull = sweep->main.share * total,
                  .pull_at = sweep->main.angle};
  switch (sweep->piece.method) {
    case plan::TurnMethod::edge: told.how = "about its edge"; break;
    case plan::TurnMethod::table: told.how = "off a tilting table"; break;
    case plan::TurnMethod::two_hooks:
      told.how = "between two hooks";
      told.tail_pull = sweep->tail.share * total;
      told.tail_at = sweep->tail.angle;
      break;
  }
  if (sweep->falls_free > Angle{}) told.balance = sweep->balance;
  report.turn = std::move(told);
}

void tell_losses(const StageFacts& facts, StageReport& report) {
  if (!facts.tells_losses) return;
  report.losses = lost_points(facts);
  std::ranges::stable_sort(report.losses, [](const PointLoss& a, const PointLoss& b) {
    constexpr double not_found = std::numeric_limits<double>::infinity();
    return a.use.value_or(not_found) > b.use.value_or(not_found);
  });
}

// A note of piece-cracking alone stands for what was not computed; that of the cracks stands beside what was.
bool bending_left_out(const StageReport& stage) {
  bool noted = false, computed = false;
  for (const Finding& finding : stage.findings) {
    if (finding.rule != "piece-cracking") continue;
    if (finding.result == Result::note) noted = true;
    if (finding.utilization) computed = true;
  }
  return noted && !computed;
}

BendingChecked bending_checked(const plan::Plan& plan, const ModelChoice& model,
                               const std::vector<StageReport>& stages) {
  if ((model.model == plan::PieceModel::block && model.known == Known::no) ||
      std::ranges::any_of(stages, bending_left_out))
    return BendingChecked::none;
  if (plan.piece.may_crack) return BendingChecked::with_bars;
  return model.model == plan::PieceModel::panel && !model.stepped ? BendingChecked::turned : BendingChecked::as_cast;
}

}  // namespace

std::vector<Finding> judge(const Rule& rule, const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  try {
    trace.about([&] { return fmt::format("{}: {}", word_for(facts.stage.kind), rule.id); });
    findings = rule.judge(facts, trace);
  } catch (const std::exception& fault) {
    findings = {missing(rule.id, facts.plan.piece.mark,
                        fmt::format("the rule could not be evaluated: {}", fault.what()),
                        "this is a fault of the program: report it, and do not lift on this verdict")};
  }
  const auto is_missing = [](const Finding& finding) { return finding.result == Result::missing; };
  if (std::ranges::any_of(findings, is_missing) && !is_mandatory(rule.id, facts))
    for (Finding& finding : findings)
      if (is_missing(finding)) finding.result = Result::note;
  return findings;
}

const std::vector<Finding>& KeptFindings::of(const Rule& rule, const StageFacts& facts) {
  const auto [place, is_new] = known_.try_emplace(&rule);
  if (is_new) {
    Trace silent;
    place->second = checks::judge(rule, facts, silent);
  }
  return place->second;
}

StageReport evaluate_stage(const StageFacts& facts, Trace& trace, KeptFindings* kept) {
  StageReport report{.kind = facts.stage.kind, .rigging = facts.stage.rigging, .crane = facts.stage.crane};
  report.findings.reserve(all_rules().size() * (facts.plan.inserts.size() + 1));  // about one for each insert
  for (const Rule& rule : all_rules()) {
    if (kept && rule.at_any_strength && !trace.is_recording()) {
      const std::vector<Finding>& known = kept->of(rule, facts);
      report.findings.insert(report.findings.end(), known.begin(), known.end());
      continue;
    }
    for (Finding& finding : judge(rule, facts, trace)) report.findings.push_back(std::move(finding));
  }
  for (Finding& gap : coverage_gaps(facts, report.findings)) report.findings.push_back(std::move(gap));
  report.verdict = verdict_of(report.findings);

  if (const auto* load = std::get_if<loads::StageLoad>(&facts.load)) report.load = *load;
  tell_cranes(facts, report);
  if (const auto* hanging = std::get_if<demands::Hanging>(&facts.hanging)) {
    report.tilt = hanging->tilt;
    report.hanging = *hanging;
    if (const auto* hung = std::get_if<demands::HungPiece>(&facts.hung))
      for (const demands::Carrier& carrier : hung->carriers) report.carriers.push_back(carrier.id);
  }
  if (const auto* required = std::get_if<Stress>(&facts.required_strength)) report.required_strength = *required;
  tell_turn(facts, report);
  tell_legs(facts, report);
  tell_inserts(facts, report);
  tell_losses(facts, report);
  return report;
}

Report evaluate_plan(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                     const tables::Tables& tables, std::string fingerprint, SignOffState sign_off,
                     KnownBending* bending) {
  Report report{.file = plan.file,
                .mark = plan.piece.mark,
                .title = plan.piece.title,
                .revision = plan.piece.revision,
                .prepared_by = plan.piece.prepared_by,
                .engineer = plan.piece.engineer,
                .units = plan.piece.units,
                .fingerprint = std::move(fingerprint),
                .rules = rules.id,
                .rules_title = rules.title,
                .volume = body.volume,
                .mass = body.volume * plan.concrete.density,
                .centre_of_gravity = body.centroid,
                .strength_basis = strength::basis_of(plan.concrete, rules),
                .evidence_until = strength::evidence_until(plan.concrete),
                .overridden = tables.overridden,
                .choices = choices_of(rules),
                .cautions = cautions_of(rules),
                .not_checked = {},
                .trace = Trace::recording(),
                .sign_off = std::move(sign_off)};

  for (std::string& text : cautions_of(plan)) report.cautions.push_back(std::move(text));
  const ModelChoice model = piece_model(plan, body, rules.cracking);
  report.choices.push_back(told(model, body, rules.cracking, plan.piece.units));
  for (std::string& text : stated_instead(plan, rules, tables)) report.choices.push_back(std::move(text));

  Trace& trace = report.trace;
  const Anchorage prepared = anchorage(plan, body, rules, tables, trace);
  for (const plan::Stage& stage : plan.stages) {
    trace.about([&] { return fmt::format("{}: loads and strength", word_for(stage.kind)); });
    StageFacts facts = stage_facts(plan, stage, body, prepared, rules, tables, trace,
                                   bending ? bending->of_stage(report.stages.size()) : nullptr);
    facts.tells_losses = true;
    facts.sign_off = &report.sign_off;
    report.stages.push_back(evaluate_stage(facts, trace));
    if (auto text = line_method_told(facts, model); !text.empty()) report.choices.push_back(std::move(text));
    if (const auto* usable = std::get_if<Stress>(&facts.usable_strength)) report.usable_strength = *usable;
    if (const auto& required = report.stages.back().required_strength)
      if (!report.required_strength || *required > *report.required_strength) report.required_strength = *required;
  }
  report.verdict = report.stages.empty() ? Verdict::hold : Verdict::go;
  for (const StageReport& stage : report.stages) report.verdict = std::max(report.verdict, stage.verdict);
  report.not_checked = not_checked(bending_checked(plan, model, report.stages));
  report.unconfirmed = unconfirmed_in(trace);
  return report;
}

}  // namespace firstpick::checks
