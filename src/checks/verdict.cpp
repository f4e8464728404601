#include "checks/verdict.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/gear_in_use.hpp"
#include "checks/insert_families.hpp"
#include "plan/rigging_tree.hpp"

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
    case Scope::gear: return "gear";
    case Scope::insert: return "insert";
    case Scope::headed_insert: return "headed insert";
    case Scope::rated_insert: return "rated insert";
    case Scope::beam: return "beam";
    case Scope::sheave: return "sheave";
    case Scope::loop_insert: return "loop insert";
    case Scope::plate_insert: return "plate insert";
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
      for (LiftingCrane& crane : cranes_of(facts)) subjects.push_back(std::move(crane.id));
      return subjects;
    case Scope::beam:
      if (facts.rigging)
        for (const plan::Beam& beam : facts.rigging->beams) subjects.push_back(beam.id);
      return subjects;
    case Scope::sheave:
      if (!facts.rigging) return subjects;
      for (const plan::Sheave& sheave : facts.rigging->sheaves) subjects.push_back(sheave.id);
      for (const auto& group : facts.rigging->equalised)
        if (group.size() > 1) subjects.push_back(plan::sheave_at_hook(group));
      return subjects;
    case Scope::leg:
      if (!facts.rigging) return subjects;
      subjects.reserve(facts.rigging->legs.size());
      for (const plan::Leg& leg : facts.rigging->legs) subjects.push_back(leg.to);
      return subjects;
    case Scope::gear:
      for (const GearInUse& gear : gear_in_use(facts)) subjects.push_back(gear.id);
      return subjects;
    case Scope::insert:
    case Scope::headed_insert:
    case Scope::rated_insert:
    case Scope::loop_insert:
    case Scope::plate_insert:
      subjects.reserve(facts.plan.inserts.size());
      for (const plan::Insert& insert : facts.plan.inserts) {
        const bool headed = insert.kind == "headed";
        const bool rated = insert.kind == "rated" || insert.rating.has_value();
        if (scope == Scope::insert || (scope == Scope::headed_insert && headed) ||
            (scope == Scope::rated_insert && rated) ||
            (scope == Scope::loop_insert && is_lifting_loop(insert.kind)) ||
            (scope == Scope::plate_insert && insert.kind == "plate"))
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

// The findings of each rule, which stand together, mostly in the order of the rule list; at the place of the rule in it.
using ByRule = std::vector<std::span<const Finding>>;
ByRule by_rule(std::span<const Finding> findings) {
  const std::span<const Rule> rules = all_rules();
  ByRule found(rules.size());
  std::size_t next = 0;
  for (std::size_t first = 0; first < findings.size();) {
    std::size_t last = first + 1;
    while (last < findings.size() && findings[last].rule == findings[first].rule) ++last;
    if (next == rules.size() || rules[next].id != findings[first].rule)
      next = static_cast<std::size_t>(std::ranges::find(rules, findings[first].rule, &Rule::id) - rules.begin());
    if (next < rules.size()) {
      if (found[next].empty()) found[next] = findings.subspan(first, last - first);
      ++next;
    }
    first = last;
  }
  return found;
}

// The subjects of each scope, found once.
class Subjects {
 public:
  explicit Subjects(const StageFacts& facts) : facts_(facts) {}
  const std::vector<std::string>& of(Scope scope) {
    auto& known = known_.at(static_cast<std::size_t>(scope));
    if (!known) known = subjects_of(scope, facts_);
    return *known;
  }

 private:
  const StageFacts& facts_;
  std::array<std::optional<std::vector<std::string>>, number_of_scopes> known_;
};

}  // namespace

bool is_mandatory(std::string_view rule, const StageFacts& facts) {
  return std::ranges::any_of(facts.rules.mandatory,
                             [&](const auto& m) { return m.rule == rule && applies(m, facts); });
}

std::vector<Finding> coverage_gaps(const StageFacts& facts, std::span<const Finding> findings) {
  constexpr std::string_view id = "rule-coverage";
  std::vector<Finding> gaps;
  const ByRule of_rules = by_rule(findings);
  Subjects subjects(facts);
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
    const std::span<const Finding> given = of_rules[static_cast<std::size_t>(rule - all_rules().data())];
    for (const std::string& subject : subjects.of(rule->scope)) {
      if (std::ranges::find(given, subject, &Finding::subject) == given.end())
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
