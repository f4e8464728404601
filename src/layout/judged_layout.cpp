#include "layout/judged_layout.hpp"

#include <algorithm>
#include <cmath>

#include "checks/evaluate.hpp"
#include "checks/needed_strength.hpp"
#include "checks/verdict.hpp"

namespace firstpick::layout {

namespace {

bool of_the_test(std::string_view rule) { return rule == "strength-evidence" || rule == "evidence-age"; }

// Of every rule and the coverage guard, as checks::evaluate_stage has them.
std::vector<checks::Finding> all_findings(const checks::StageFacts& facts) {
  Trace silent;
  std::vector<checks::Finding> all;
  for (const checks::Rule& rule : checks::all_rules())
    for (checks::Finding& finding : checks::judge(rule, facts, silent)) all.push_back(std::move(finding));
  for (checks::Finding& gap : checks::coverage_gaps(facts, all)) all.push_back(std::move(gap));
  return all;
}

Judged judged(std::size_t stage, checks::Finding&& finding) {
  Judged made{stage, finding.rule, std::move(finding.subject), finding.result, {}, std::move(finding.text)};
  if (finding.utilization) {
    const double use = *finding.utilization / finding.limit.value_or(1.0);
    if (std::isfinite(use)) made.use = use;
  }
  return made;
}

}  // namespace

JudgedLayout judged_layout(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                           const tables::Tables& tables, std::shared_ptr<checks::BendingReuse> reuse) {
  JudgedLayout made;
  checks::Verdict verdict = plan.stages.empty() ? checks::Verdict::hold : checks::Verdict::go;
  Trace silent;
  const checks::Anchorage anchorage = checks::anchorage(plan, body, rules, tables, silent);
  for (std::size_t stage = 0; stage < plan.stages.size(); ++stage) {
    checks::StageFacts facts = checks::stage_facts(plan, plan.stages[stage], body, anchorage, rules, tables, silent);
    facts.bending->reuse = reuse;
    facts.in_words = false;
    StageStrength strength;
    const auto* shown = std::get_if<Stress>(&facts.usable_strength);
    const auto* required = std::get_if<Stress>(&facts.required_strength);
    strength.shown = shown != nullptr;
    strength.stated = required != nullptr;
    strength.value = shown ? *shown : required ? *required : rules.minimum_strength.value;
    std::vector<checks::Finding> all;
    if (shown || !reuse) {
      all = all_findings(facts);
      verdict = std::max(verdict, checks::verdict_of(all));
    }
    if (!shown) all = all_findings(checks::with_strength(facts, strength.value));
    for (checks::Finding& finding : all)
      if (!of_the_test(finding.rule)) made.findings.push_back(judged(stage, std::move(finding)));
    made.strengths.push_back(strength);
  }
  if (!reuse) made.verdict = verdict;
  return made;
}

}  // namespace firstpick::layout
