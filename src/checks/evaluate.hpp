// One stage, one plan: every rule in its order, the coverage guard, the verdict, and the numbers worth telling.
#pragma once

#include <unordered_map>
#include <vector>

#include "checks/report.hpp"
#include "checks/rule.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// What one rule finds. A rule that throws is missing; what the rule set does not demand is a note where it is missing.
std::vector<Finding> judge(const Rule& rule, const StageFacts& facts, Trace& trace);

// What those rules find that do not look at the strength, kept by who judges one stage at several strengths. Never for other
// facts than these at another strength.
class KeptFindings {
 public:
  const std::vector<Finding>& of(const Rule& rule, const StageFacts& facts);

 private:
  std::unordered_map<const Rule*, std::vector<Finding>> known_;
};

// `kept`: of an earlier call; null, or a trace that records: every rule is judged anew.
StageReport evaluate_stage(const StageFacts& facts, Trace& trace, KeptFindings* kept = nullptr);

// The whole plan under one rule set. `fingerprint` is the caller's. `bending`: kept from an earlier call; null: found anew.
Report evaluate_plan(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                     const tables::Tables& tables, std::string fingerprint, SignOffState sign_off = {},
                     KnownBending* bending = nullptr);

}  // namespace firstpick::checks
