// One piece judged by several rule sets: what each says, where they part, and which assumption parts them.
//
// Everything here is computed from findings and rule sets: the split of each use into demand, resistance and factor is exact,
// and each assumption is told by what the first rule set gives with that one thing taken from the other. No set is preferred.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"

namespace firstpick::comparison {

enum class Part { demand, nominal, factor };  // of a use: demand / (nominal / factor)

std::string_view word_for(Part part);  // "demand", "nominal", "factor"

// Of the other rule set's finding over the first one's. use = demand x factor / nominal where the three are there.
struct Ratios {
  double use = 1.0;
  std::optional<double> demand, nominal, factor;  // all three or none
  std::optional<Part> largest;                    // the one that changes the use most, up or down; absent: none does
};

// What one rule says of one subject under two rule sets; a side is absent where that set gave no such finding.
struct Pair {
  std::string_view rule;
  std::string subject;
  std::optional<checks::Finding> first, other;
  std::optional<Ratios> ratios;  // where both have a use, and neither is zero
};

// The first rule set with one assumption of the other.
struct Effect {
  std::string_view assumption;
  std::string first, other;  // what each has, in words
  double use = 0.0;          // then
  double ratio = 1.0;        // over the use by the first as it is
};

// A pair that decides, and what each assumption alone makes of it; the largest change first, those that change nothing left
// out.
struct Explained {
  Pair pair;
  std::vector<Effect> effects;
};

// What one rule says under one set only, or otherwise under the other; the same for all subjects.
struct Difference {
  std::string_view rule;
  std::vector<std::string> subjects;
  std::optional<checks::Result> first, other;  // absent: no such finding
  std::string first_text, other_text;
  std::vector<std::string> turned_by;  // assumptions of which each alone makes the first set say what the other says
};

// The first rule set with one assumption of the other gives this stage another verdict.
struct Turned {
  std::string_view assumption;
  std::string first, other;
  checks::Verdict verdict = checks::Verdict::hold;
};

struct StageContrast {
  plan::StageKind kind = plan::StageKind::strip;
  checks::Verdict first = checks::Verdict::hold, other = checks::Verdict::hold;
  std::vector<Pair> pairs;              // every rule and subject with a use under either, in the order of the rules
  std::vector<Explained> explained;     // those that decide under either, where the two are not alike
  std::vector<Difference> differences;
  std::vector<Turned> turned;
};

// The first rule set against another.
struct Contrast {
  std::size_t other = 0;  // index of its report
  std::vector<StageContrast> stages;
};

struct Comparison {
  std::vector<checks::Report> reports;   // in the order asked, two or more
  std::string named_by_plan;             // the rule set in the plan; empty: it names none
  checks::Verdict worst = checks::Verdict::hold;
  std::vector<Contrast> contrasts;       // of the first report against each other one
};

// All verdicts of the whole plan are the same.
bool is_agreed(const Comparison& comparison);

// What the verdicts together mean, in plain sentences; never that one of them may be picked.
std::vector<std::string> statement(const Comparison& comparison);

}  // namespace firstpick::comparison
