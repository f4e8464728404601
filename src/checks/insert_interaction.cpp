// Tension and shear at once: the insert holds what it holds of each.
//
// Formula  resistances/interaction.cpp, from the largest utilization in tension and the largest in shear of the same
//          situation, each behind the insert factor.
// Source   ACI 318-19 17.8. Rule page: docs/rules/insert-interaction.md.

#include <algorithm>

#include <fmt/format.h>

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"
#include "resistances/interaction.hpp"

namespace firstpick::checks {

namespace {

// The largest utilization in tension (or shear) of one insert in one situation.
Outcome<Ratio> largest(const StageFacts& facts, std::size_t situation, std::size_t insert, bool tension) {
  double most = 0.0;
  for (const Mode mode : all_modes) {
    if (in_tension(mode) != tension) continue;
    const ModeCheck& check = facts.modes.at(situation, insert, mode);
    if (check.comparison.result == Result::missing) return NotAssessed{check.comparison.why, check.comparison.remedy};
    if (check.applies && !check.comparison.utilization) return NotAssessed{"a utilization was not computed", {}};
    most = std::max(most, check.comparison.utilization.value_or(0.0));
  }
  return Ratio{most};
}

struct Both {
  Ratio tension{}, shear{};
};
Outcome<Both> both(const StageFacts& facts, std::size_t situation, std::size_t insert) {
  const auto tension = largest(facts, situation, insert, true);
  if (const auto* gap = std::get_if<NotAssessed>(&tension)) return *gap;
  const auto shear = largest(facts, situation, insert, false);
  if (const auto* gap = std::get_if<NotAssessed>(&shear)) return *gap;
  return Both{std::get<Ratio>(tension), std::get<Ratio>(shear)};
}

Finding judge_one(std::string_view id, std::size_t insert, const StageFacts& facts, Trace& trace) {
  const std::string& subject = facts.plan.inserts[insert].id;
  const auto* situations = std::get_if<std::vector<InsertSituation>>(&facts.insert_situations);
  if (!situations || situations->empty()) {
    const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations);
    return missing(id, subject, gap ? gap->why : "no situation was computed", gap ? gap->remedy : "");
  }
  Trace silent;
  std::size_t worst = 0;
  double most = -1.0;
  for (std::size_t s = 0; s < situations->size(); ++s) {
    const auto uses = both(facts, s, insert);
    if (const auto* gap = std::get_if<NotAssessed>(&uses)) return missing(id, subject, gap->why, gap->remedy);
    const auto& b = std::get<Both>(uses);
    const double use = resistances::interaction_utilization(b.tension, b.shear, facts.rules.headed, silent).value();
    if (!(use >= 0.0)) return missing(id, subject, "the interaction is not a usable number", {});
    if (use > most) {
      most = use;
      worst = s;
    }
  }
  trace.about([&] {
    return fmt::format("{}: {}, insert {}, {}", plan::word_for(facts.stage.kind), id, subject, situations->at(worst).name);
  });
  const auto governing = std::get<Both>(both(facts, worst, insert));
  const Ratio use = resistances::interaction_utilization(governing.tension, governing.shear, facts.rules.headed, trace);
  Finding finding = compared<Ratio>(id, subject, Demand<Ratio>{use}, Resistance<Ratio>{Ratio{1.0}}, 1.0,
                                    "ACI 318-19 17.8");
  finding.situation = situations->at(worst).name;
  if (finding.result == Result::fail && facts.in_words) {
    finding.text = fmt::format("tension uses {} and shear {} of insert {}, together more than it holds",
                               print_utilization(governing.tension.value()),
                               print_utilization(governing.shear.value()), subject);
    if (situations->at(worst).some_legs_only || situations->at(worst).turning) finding.text += fmt::format(", {}", situations->at(worst).name);
    finding.remedy = remedy_in(
        situations->at(worst), "steeper legs or a spreader beam (less shear), a deeper insert, or more strength before lifting");
  }
  return finding;
}

}  // namespace

std::vector<Finding> insert_interaction(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (std::size_t insert = 0; insert < facts.plan.inserts.size(); ++insert)
    if (facts.plan.inserts[insert].kind == "headed")
      findings.push_back(judge_one("insert-interaction", insert, facts, trace));
  return findings;
}

}  // namespace firstpick::checks
