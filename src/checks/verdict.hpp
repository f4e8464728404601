// From findings to a verdict, with the guard that silence is never safety.
#pragma once

#include <span>
#include <vector>

#include "checks/finding.hpp"
#include "checks/report.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

// NO-GO if anything failed, HOLD if anything is missing, GO otherwise; no findings at all are HOLD.
Verdict verdict_of(std::span<const Finding> findings);

// One missing finding for each mandatory rule and subject that gave none: a rule skipped by a bug is HOLD, never GO.
// A rule that is mandatory but does not exist, and a stage for which nothing is mandatory, are gaps too.
std::vector<Finding> coverage_gaps(const StageFacts& facts, std::span<const Finding> findings);

// Whether the rule set demands this rule in this stage. What is missing for a rule it does not demand is a note.
bool is_mandatory(std::string_view rule, const StageFacts& facts);

}  // namespace firstpick::checks
