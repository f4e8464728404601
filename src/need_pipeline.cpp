#include "need_pipeline.hpp"

#include "checks/changed_plans.hpp"
#include "fingerprint.hpp"
#include "piece/moved_inserts.hpp"
#include "pipeline.hpp"
#include "plan/read_plan.hpp"

namespace firstpick {

namespace {

// The drawing's strengths are what is asked for: where it states none, the rule set's least stands in.
bool state_requirement(plan::Concrete& concrete, plan::StageKind stage, const tables::RuleSet& rules) {
  std::optional<Stress>& stated = stage == plan::StageKind::strip  ? concrete.form_stripping_strength
                                  : stage == plan::StageKind::haul ? concrete.transportation_strength
                                                                   : concrete.lifting_strength;
  if (stated) return true;
  stated = rules.minimum_strength.value;
  return false;
}

checks::StageNeed need_of_stage(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                                const tables::RuleSet& rules, const tables::Tables& tables) {
  Trace silent;
  const checks::Anchorage anchorage = checks::anchorage(plan, body, rules, tables, silent);
  return checks::needed_strength(checks::stage_facts(plan, stage, body, anchorage, rules, tables, silent));
}

checks::NeedIfChanged need_if(const checks::ChangedPlan& changed, std::size_t stage, const piece::Body& body,
                              const tables::RuleSet& rules, const tables::Tables& tables) {
  checks::NeedIfChanged answer{.change = changed.words, .strength = {}, .why_not = {}};
  const auto made = changed.moves_inserts ? piece::with_inserts_of(body, changed.plan)
                                          : std::variant<piece::Body, std::vector<Diagnostic>>{body};
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&made)) {
    answer.why_not = faults->empty() ? "the piece cannot be made so" : faults->front().what;
    return answer;
  }
  const auto need = need_of_stage(changed.plan, changed.plan.stages.at(stage), std::get<piece::Body>(made), rules, tables);
  if (need.to_print && need.verdict == checks::Verdict::go) answer.strength = need.to_print;
  else if (!need.not_mended.empty())
    answer.why_not = std::string(need.not_mended.front().rule) + " stays, " + need.not_mended.front().subject;
  else answer.why_not = "no strength was found";
  return answer;
}

}  // namespace

std::variant<checks::NeedReport, std::vector<Diagnostic>> need_of_plan(const std::string& file, std::string_view text,
                                                                       const std::string& rules,
                                                                       const tables::Tables& tables) {
  const auto plan_read = plan::read_plan(file, text, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&plan_read)) return *faults;
  plan::Plan plan = std::get<plan::Plan>(plan_read);
  const auto chosen = chosen_rules(file, rules, plan, tables);
  if (const auto* fault = std::get_if<Diagnostic>(&chosen)) return std::vector{*fault};
  const tables::RuleSet& rule_set = *std::get<const tables::RuleSet*>(chosen);
  const auto body_made = piece::make_body(plan);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&body_made)) return *faults;
  const auto& body = std::get<piece::Body>(body_made);

  checks::NeedReport report{.file = plan.file, .mark = plan.piece.mark, .title = plan.piece.title,
                            .revision = plan.piece.revision, .fingerprint = fingerprint_of(text, rule_set.id, tables),
                            .rules = rule_set.id, .units = plan.piece.units, .stages = {}};
  for (std::size_t i = 0; i < plan.stages.size(); ++i) {
    plan::Plan asked = plan;
    checks::StageNeedReport stage;
    stage.requirement_stated = state_requirement(asked.concrete, plan.stages[i].kind, rule_set);
    stage.need = need_of_stage(asked, asked.stages[i], body, rule_set, tables);
    for (const checks::ChangedPlan& changed : checks::changed_plans(asked, body))
      stage.changes.push_back(need_if(changed, i, body, rule_set, tables));
    report.stages.push_back(std::move(stage));
  }
  return report;
}

}  // namespace firstpick
