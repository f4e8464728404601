#include "checks/verdict.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/tail_crane.hpp"

namespace firstpick::checks {

std::string_view word_for(Verdict verdict) {
  switch (verdict) {
    case Verdict::go: return "GO";
    case Verdict::hold: return "HOLD";
    case Verdict::no_go: return "NO-GO";
  }
  return "HOLD";
}

std::string_view word_for(Scope scope) {
  switch (scope) {
    case Scope::piece: return "piece";
    case Scope::rigging: return "rigging";
    case Scope::crane: return "crane";
    case Scope::leg: return "leg";
    case Scope::insert: return "insert";
    case Scope::headed_insert: return "headed insert";
    case Scope::rated_insert: return "rated insert";
  }
  return "piece";
}

Verdict verdict_of(std::span<const Finding> findings) {
  if (findings.empty()) return Verdict::hold;
  Result worst = Result::pass;
  for (const Finding& finding : findings) worst = std::max(worst, finding.result);
  switch (worst) {
    case Result::pass:
    case Result::note: return Verdict::go;
    case Result::missing: return Verdict::hold;
    case Result::fail: return Verdict::no_go;
  }
  return Verdict::hold;
}

std::vector<std::string> subjects_of(Scope scope, const StageFacts& facts) {
  std::vector<std::string> subjects;
  switch (scope) {
    case Scope::piece: return {facts.plan.piece.mark};
    case Scope::rigging: return {facts.stage.rigging};
    case Scope::crane:
      subjects.push_back(facts.crane ? facts.crane->id : facts.stage.crane);
      if (const plan::Turn* turn = turn_between_two_hooks(facts.stage)) subjects.push_back(turn->tail_crane);
      return subjects;
    case Scope::leg:
      if (facts.rigging)
        for (const plan::Leg& leg : facts.rigging->legs) subjects.push_back(leg.to);
      return subjects;
    case Scope::insert:
    case Scope::headed_insert:
    case Scope::rated_insert:
      for (const plan::Insert& insert : facts.plan.inserts) {
        const bool headed = insert.kind == "headed";
        const bool rated = insert.kind == "rated" || insert.rating.has_value();
        if (scope == Scope::insert || (scope == Scope::headed_insert && headed) ||
            (scope == Scope::rated_insert && rated))
          subjects.push_back(insert.id);
      }
      return subjects;
  }
  return subjects;
}

namespace {

bool applies(const tables::Mandatory& mandatory, const StageFacts& facts) {
  return mandatory.stages.empty() ||
         std::ranges::find(mandatory.stages, word_for(facts.stage.kind)) != mandatory.stages.end();
}

}  // namespace

bool is_mandatory(std::string_view rule, const StageFacts& facts) {
  return std::ranges::any_of(facts.rules.mandatory,
                             [&](const auto& m) { return m.rule == rule && applies(m, facts); });
}

std::vector<Finding> coverage_gaps(const StageFacts& facts, std::span<const Finding> findings) {
  constexpr std::string_view id = "rule-coverage";
  std::vector<Finding> gaps;
  const std::string& mark = facts.plan.piece.mark;
  bool anything = false;
  for (const tables::Mandatory& mandatory : facts.rules.mandatory) {
    if (!applies(mandatory, facts)) continue;
    anything = true;
    const Rule* rule = rule_named(mandatory.rule);
    if (!rule) {
      gaps.push_back(missing(id, mark,
                             fmt::format("rule set '{}' demands rule '{}', which this version does not have",
                                         facts.rules.id, mandatory.rule),
                             "correct the rule set, or use a version that has the rule"));
      continue;
    }
    for (const std::string& subject : subjects_of(rule->scope, facts)) {
      const bool given = std::ranges::any_of(
          findings, [&](const Finding& f) { return f.rule == rule->id && f.subject == subject; });
      if (!given)
        gaps.push_back(missing(id, subject, fmt::format("rule '{}' gave no finding for {}", rule->id, subject),
                               "this is a fault of the program: report it, and do not lift on this verdict"));
    }
  }
  if (!anything)
    gaps.push_back(missing(id, mark,
                           fmt::format("rule set '{}' demands no rule for stage '{}'", facts.rules.id,
                                       word_for(facts.stage.kind)),
                           "name the mandatory rules in the rule set"));
  return gaps;
}

}  // namespace firstpick::checks
