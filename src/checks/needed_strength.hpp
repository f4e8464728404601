// The strength of the concrete at which a stage passes, rule by rule.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct RuleNeed {               // a rule that weak concrete fails
  std::string_view rule;
  Stress strength{};            // passes here, and not at 0.1 % less
  std::string subject;          // that governs just below it
};

struct StageNeed {
  plan::StageKind kind = plan::StageKind::strip;
  std::string rigging;
  std::vector<RuleNeed> rules;      // most strength first
  std::vector<Finding> not_mended;  // that no strength mends: missing or failing at the strongest concrete too
  // For the drawing: the most of `rules`, rounded up to "strength_step" of the rule set, every rule judged again there.
  std::optional<Stress> to_print;
  Verdict verdict = Verdict::hold;  // there, of all rules but those of the test itself
};

// The same stage with concrete of this strength; everything that depends on it computed again.
void set_strength(StageFacts& facts, Stress strength);
StageFacts with_strength(const StageFacts& facts, Stress strength);

// Rules about the test itself (strength-evidence, evidence-age) are left out: the question is what it must show.
StageNeed needed_strength(const StageFacts& facts);

}  // namespace firstpick::checks
