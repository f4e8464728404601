// Rules that say that the strength of the concrete is nothing to them, and evaluations that keep what these found.

#include <catch2/catch.hpp>

#include <set>
#include <string>
#include <vector>

#include "checks/evaluate.hpp"
#include "checks/needed_strength.hpp"
#include "checks/piece_bending.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Finding;

namespace {

// All that a finding says.
std::string said_by(const Finding& finding) {
  const auto number = [](const auto& figure) { return figure ? std::to_string(*figure) : std::string("none"); };
  const auto figure = [](const auto& one) { return one ? std::to_string(checks::si_number(*one)) : std::string("none"); };
  std::string said;
  for (const std::string& part :
       {std::string(finding.rule), finding.subject, std::string(checks::word_for(finding.result)), figure(finding.demand),
        figure(finding.nominal), number(finding.factor), figure(finding.capacity), number(finding.utilization),
        number(finding.limit), finding.clause, finding.text, finding.remedy, finding.situation, finding.together})
    said += part + "|";
  return said;
}

std::vector<std::string> said_by(const std::vector<Finding>& findings) {
  std::vector<std::string> said;
  for (const Finding& finding : findings) said.push_back(said_by(finding));
  return said;
}

std::vector<std::string> judged(const checks::Rule& rule, const checks::StageFacts& facts) {
  Trace silent;
  return said_by(checks::judge(rule, facts, silent));
}

// Each stage of every plan under both rule sets, as it is judged before anybody asks for another strength.
template <class Ask>
void for_each_stage(const Ask& ask) {
  for (const std::string& file : all_plans()) {
    const CheckedPlan checked = checked_plan(file);
    for (const char* rules_id : {"us", "eu"}) {
      const tables::RuleSet& rules = real_tables().rule_sets.at(rules_id);
      Trace silent;
      const checks::Anchorage inserts = checks::anchorage(checked.plan, checked.body, rules, real_tables(), silent);
      for (const plan::Stage& stage : checked.plan.stages) {
        CAPTURE(file, rules_id, plan::word_for(stage.kind));
        ask(checks::stage_facts(checked.plan, stage, checked.body, inserts, rules, real_tables(), silent));
      }
    }
  }
}

}  // namespace

TEST_CASE("a rule that says so finds the same at any strength of the concrete, and at none") {
  std::size_t rules_seen = 0, others_changed = 0;
  std::set<std::string> differing;
  for_each_stage([&](const checks::StageFacts& facts) {
    const checks::StageFacts weak = checks::with_strength(facts, 1.0 * MPa), strong = checks::with_strength(facts, 150.0 * MPa);
    checks::StageFacts none = weak;
    none.usable_strength = none.formula_strength = NotAssessed{"not to be read", {}};
    none.modes = {};
    for (auto& one : none.as_cracked) one = NotAssessed{"not to be read", {}};
    for (const checks::Rule& rule : checks::all_rules()) {
      const auto at_weak = judged(rule, weak), at_strong = judged(rule, strong);
      if (!rule.at_any_strength) {
        if (at_weak != at_strong) ++others_changed;
        continue;
      }
      ++rules_seen;
      if (at_weak != at_strong || at_weak != judged(rule, none))
        differing.insert(std::string(rule.id) + " in " + facts.plan.file);
    }
  });
  CHECK(differing == std::set<std::string>{});
  CHECK(rules_seen > 1000);
  CHECK(others_changed > 100);
}

TEST_CASE("a stage judged again at another strength finds what it finds judged anew") {
  for (const std::string& file : demo_plans()) {
    CAPTURE(file);
    const CheckedPlan checked = checked_plan(file);
    const tables::RuleSet& rules = real_tables().rule_sets.at("us");
    Trace silent;
    const checks::Anchorage inserts = checks::anchorage(checked.plan, checked.body, rules, real_tables(), silent);
    const auto facts =
        checks::stage_facts(checked.plan, checked.plan.stages.front(), checked.body, inserts, rules, real_tables(), silent);
    checks::KeptFindings kept;
    checks::StageFacts changed = facts;
    bool differs = false;
    std::vector<std::string> before;
    for (const Stress& strength : {30.0 * MPa, 2.0 * MPa, 60.0 * MPa}) {
      checks::set_strength(changed, strength);
      const auto again = said_by(checks::evaluate_stage(changed, silent, &kept).findings);
      CHECK(again == said_by(checks::evaluate_stage(checks::with_strength(facts, strength), silent).findings));
      differs = differs || (!before.empty() && again != before);
      before = again;
    }
    CHECK(differs);
  }
}
