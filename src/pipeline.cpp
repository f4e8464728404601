#include "pipeline.hpp"

#include <utility>

#include "checks/evaluate.hpp"
#include "fingerprint.hpp"
#include "plan/read_plan.hpp"

namespace firstpick {

namespace {

constexpr std::string_view rules_unless_named = "us";

// Several are for `firstpick check` alone, which asks for each by its name.
std::string help_on(const std::string& chosen, const std::map<std::string, tables::RuleSet>& sets) {
  if (chosen.find(',') != std::string::npos) return "name one: only firstpick check --rules holds several side by side";
  std::vector<std::string_view> names;
  for (const auto& [id, set] : sets) names.push_back(id);
  return suggestion(chosen, names);
}

}  // namespace

std::variant<const tables::RuleSet*, Diagnostic> chosen_rules(const std::string& file, const std::string& rules,
                                                              const plan::Plan& plan, const tables::Tables& tables) {
  const std::string chosen = !rules.empty() ? rules : !plan.rules.empty() ? plan.rules : std::string(rules_unless_named);
  const auto rule_set = tables.rule_sets.find(chosen);
  if (rule_set == tables.rule_sets.end())
    return Diagnostic{.file = file, .what = "there is no rule set '" + printable(chosen) + "'",
                      .help = help_on(chosen, tables.rule_sets)};
  return &rule_set->second;
}

std::variant<PreparedPlan, std::vector<Diagnostic>> prepare_plan(const std::string& file, std::string_view text,
                                                                   const std::string& rules,
                                                                   const tables::Tables& tables) {
  auto plan_read = plan::read_plan(file, text, tables);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&plan_read)) return std::move(*faults);
  auto& plan = std::get<plan::Plan>(plan_read);

  const auto chosen = chosen_rules(file, rules, plan, tables);
  if (const auto* fault = std::get_if<Diagnostic>(&chosen)) return std::vector{*fault};

  auto body_made = piece::make_body(plan);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&body_made)) return std::move(*faults);
  return PreparedPlan{std::move(plan), std::move(std::get<piece::Body>(body_made)),
                      *std::get<const tables::RuleSet*>(chosen)};
}

std::variant<CheckedPlan, std::vector<Diagnostic>> check_plan_whole(const std::string& file, std::string_view text,
                                                                    const std::string& rules,
                                                                    const tables::Tables& tables,
                                                                    const std::optional<SignOffText>& sign_off) {
  auto prepared = prepare_plan(file, text, rules, tables);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&prepared)) return std::move(*faults);
  auto& [plan, body, rule_set] = std::get<PreparedPlan>(prepared);
  auto report = checks::evaluate_plan(plan, body, rule_set, tables, fingerprint_of(text, rule_set.id, tables),
                                       sign_off_state(sign_off, text, rule_set.id, tables));
  return CheckedPlan{std::move(plan), std::move(body), std::move(report)};
}

std::variant<checks::Report, std::vector<Diagnostic>> check_plan(const std::string& file, std::string_view text,
                                                                 const std::string& rules,
                                                                 const tables::Tables& tables,
                                                                 const std::optional<SignOffText>& sign_off) {
  auto checked = check_plan_whole(file, text, rules, tables, sign_off);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&checked)) return std::move(*faults);
  return std::move(std::get<CheckedPlan>(checked).report);
}

}  // namespace firstpick
