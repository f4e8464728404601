// What `firstpick layout` found, before anyone lays it out. Output reads this and decides nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/report.hpp"
#include "layout/judged_layout.hpp"

namespace firstpick::layout {

struct Use {                      // of one rule in one stage, or of the whole plan
  std::size_t stage = 0;
  std::string_view rule;
  std::string subject;
  std::optional<double> value;    // absent: it fails or is missing without a number
  checks::Result result = checks::Result::pass;
};

struct RuleUse {                  // a rule that depends on where the picks are
  Use before, after;              // the worst subject of each
};

struct MovedInsert {
  std::string id;
  Position before, after;
  Length by{};
};

struct ChangedLeg {
  std::string rigging, to;
  Length before{}, after{};
};

struct StageLine {
  plan::StageKind kind = plan::StageKind::strip;
  std::string rigging;
  StageStrength strength;
  std::vector<RuleUse> rules;     // most used after first
  std::vector<Judged> not_mended; // barred or failing after: one for each rule
};

struct LayoutReport {
  std::string file, mark, title, revision, rules;
  std::string fingerprint;        // of the plan as given
  UnitSystem units = UnitSystem::si;
  bool drawn_is_allowed = true;   // within what [layout] allows
  bool moved = false;             // a better layout was found; else the plan as given is the best one seen
  std::optional<Use> before, after;      // the governing use of all stages
  std::size_t barred_before = 0, barred_after = 0;
  std::optional<Use> not_of_position;    // the most used rule that no move changes
  std::vector<StageLine> stages;
  std::vector<MovedInsert> inserts;
  std::vector<ChangedLeg> legs;
  checks::Verdict verdict_before = checks::Verdict::hold, verdict_after = checks::Verdict::hold;
  std::size_t layouts_judged = 0, layouts_checked_in_full = 0;
  std::string text;               // of the plan with the picks there; as given where nothing moved
};

}  // namespace firstpick::layout
