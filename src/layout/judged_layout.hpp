// One layout judged by the rules themselves, in every stage.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/finding.hpp"
#include "checks/piece_bending.hpp"
#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::layout {

struct Judged {                      // one finding: the worst that a rule says of a subject in a stage
  std::size_t stage = 0;
  std::string_view rule;
  std::string subject;
  checks::Result result = checks::Result::missing;
  std::optional<double> use;         // utilization over its limit
  std::string text;

  bool same_place(const Judged& other) const {
    return stage == other.stage && rule == other.rule && subject == other.subject;
  }
  // Fails or is missing without a number that a move could lower.
  bool is_barred() const { return result == checks::Result::missing || (result == checks::Result::fail && !use); }
};

struct StageStrength {               // what the concrete was taken to have
  bool shown = false;                // by the plan's test; else the strength required for the stage
  bool stated = true;                // by the plan, or the rule set's least
  Stress value{};
};

struct JudgedLayout {
  std::vector<Judged> findings;      // without those about the test of the concrete
  std::vector<StageStrength> strengths;  // of each stage
  checks::Verdict verdict = checks::Verdict::hold;  // that of `firstpick check`; not told (HOLD) of an estimate
};

// `reuse`: what one search keeps from layout to layout (checks/piece_bending.hpp): panels are then estimated. Null: every
// rule as `firstpick check` judges it.
JudgedLayout judged_layout(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                           const tables::Tables& tables, std::shared_ptr<checks::BendingReuse> reuse);

}  // namespace firstpick::layout
