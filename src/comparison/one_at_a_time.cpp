#include "comparison/one_at_a_time.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/evaluate.hpp"
#include "checks/insert_modes.hpp"
#include "checks/rule.hpp"
#include "checks/stage_facts.hpp"
#include "comparison/assumptions.hpp"

namespace firstpick::comparison {

namespace {

using checks::StageFacts;
using checks::StageReport;
using Cracks = std::vector<std::optional<bool>>;  // of each insert of the plan; absent: not a headed insert that is known

struct Question {
  const plan::Plan& plan;
  const piece::Body& body;
  const tables::Tables& tables;
  const checks::SignOffState& sign_off;
};

// `each(facts)` for every stage, in order.
template <class Each>
void for_stages(const Question& q, const tables::RuleSet& rules, Each each) {
  Trace silent;
  const checks::Anchorage prepared = checks::anchorage(q.plan, q.body, rules, q.tables, silent);
  for (const plan::Stage& stage : q.plan.stages) {
    StageFacts facts = checks::stage_facts(q.plan, stage, q.body, prepared, rules, q.tables, silent);
    facts.in_words = false;
    facts.tells_losses = true;  // as in a report: what the loss of a point asks is then a finding
    facts.sign_off = &q.sign_off;
    each(facts);
  }
}

const std::vector<Outcome<resistances::HeadedInsert>>& counted(const StageFacts& facts) {
  return facts.as_cracked.empty() ? facts.anchorage.headed : facts.as_cracked;
}

std::vector<Cracks> cracks_under(const Question& q, const tables::RuleSet& rules) {
  std::vector<Cracks> all;
  for_stages(q, rules, [&](const StageFacts& facts) {
    Cracks cracks;
    for (const auto& one : counted(facts)) {
      const auto* insert = std::get_if<resistances::HeadedInsert>(&one);
      cracks.push_back(insert ? std::optional(insert->cracked) : std::nullopt);
    }
    all.push_back(std::move(cracks));
  });
  return all;
}

std::string in_words(const Cracks& cracks) {
  const auto known = std::ranges::count_if(cracks, [](const auto& one) { return one.has_value(); });
  const auto cracked = std::ranges::count(cracks, std::optional(true));
  if (known == 0) return "not known";
  if (cracked == 0) return "counted as uncracked";
  return cracked == known ? std::string("counted as cracked") : fmt::format("counted as cracked at {} of {}", cracked, known);
}

std::vector<std::string> in_words(const std::vector<Cracks>& all) {
  std::vector<std::string> words;
  for (const Cracks& cracks : all) words.push_back(in_words(cracks));
  return words;
}

void count_as(const Cracks& cracks, StageFacts& facts) {
  facts.as_cracked = counted(facts);
  for (std::size_t i = 0; i < cracks.size(); ++i)
    if (auto* insert = std::get_if<resistances::HeadedInsert>(&facts.as_cracked.at(i)); insert && cracks[i])
      insert->cracked = *cracks[i];
  facts.modes = checks::mode_table(facts);
}

std::vector<StageReport> judged(const Question& q, const tables::RuleSet& rules, const std::vector<Cracks>* cracks = nullptr) {
  std::vector<StageReport> stages;
  for_stages(q, rules, [&](StageFacts& facts) {
    if (cracks) count_as(cracks->at(stages.size()), facts);
    Trace silent;
    stages.push_back(checks::evaluate_stage(facts, silent));
  });
  return stages;
}

// Every rule of headed inserts where only one of the two has partial factors on them.
std::vector<std::string_view> rules_not_meant(const Assumption& assumption, const tables::RuleSet& first,
                                              const tables::RuleSet& other) {
  std::vector<std::string_view> rules;
  if (!assumption.on_headed_inserts_by_one_factor_only || first.headed.en.has_value() == other.headed.en.has_value())
    return rules;
  for (const checks::Rule& rule : checks::all_rules())
    if (rule.scope == checks::Scope::headed_insert) rules.push_back(rule.id);
  return rules;
}

std::vector<std::string> told(const Assumption& assumption, const tables::RuleSet& one, const tables::RuleSet& beside,
                              const plan::Plan& plan) {
  std::vector<std::string> words;
  for (const plan::Stage& stage : plan.stages) words.push_back(assumption.told(one, beside, plan::word_for(stage.kind)));
  return words;
}

}  // namespace

std::vector<StageReport> judged_stages(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                                       const tables::Tables& tables, const checks::SignOffState& sign_off) {
  return judged({plan, body, tables, sign_off}, rules);
}

std::vector<Swapped> one_at_a_time(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& first,
                                   const tables::RuleSet& other, const tables::Tables& tables,
                                   const checks::SignOffState& sign_off) {
  const Question q{plan, body, tables, sign_off};
  std::vector<Swapped> all;
  for (const Assumption& assumption : all_assumptions()) {
    if (!assumption.differs(first, other)) continue;
    tables::RuleSet mixed = first;
    assumption.take(mixed, other);
    all.push_back({assumption.name, told(assumption, first, other, plan), told(assumption, other, first, plan),
                   judged(q, mixed), rules_not_meant(assumption, first, other)});
  }
  const std::vector<Cracks> own = cracks_under(q, first), others = cracks_under(q, other);
  if (own != others)
    all.push_back({"concrete at the inserts", in_words(own), in_words(others), judged(q, first, &others), {}});
  return all;
}

}  // namespace firstpick::comparison
