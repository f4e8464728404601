// Tension and shear at once: the insert holds what it holds of each.
//
// Formula  resistances/interaction.cpp, from the largest utilization in tension and the largest in shear of the same
//          situation, each behind the insert factor.
// Source   ACI 318-19 17.8; EN 1992-4:2018 table 7.3 where the rule set names that model. Rule page: docs/rules/insert-interaction.md.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"
#include "resistances/interaction.hpp"

namespace firstpick::checks {

namespace {

// The largest utilizations of one insert in one situation, by what fails.
Outcome<resistances::Uses> largest(const StageFacts& facts, std::size_t situation, std::size_t insert) {
  resistances::Uses uses;
  if (facts.plan.inserts.at(insert).bars && facts.rules.anchor_bars && facts.rules.anchor_bars->en)
    uses.power_of_bars = facts.rules.anchor_bars->en->interaction_power;
  for (const Mode mode : all_modes) {
    Ratio& most = mode == Mode::steel_tension ? uses.steel_tension
                  : mode == Mode::steel_shear ? uses.steel_shear
                  : in_tension(mode)          ? uses.concrete_tension
                                              : uses.concrete_shear;
    const ModeCheck& check = facts.modes.at(situation, insert, mode);
    if (check.comparison.result == Result::missing) return NotAssessed{check.comparison.why, check.comparison.remedy};
    if (check.applies && !(check.comparison.utilization.value_or(std::nan("")) >= 0.0))
      return NotAssessed{"a utilization was not computed", {}};
    most = std::max(most, Ratio{check.comparison.utilization.value_or(0.0)});
  }
  return uses;
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
    const auto uses = largest(facts, s, insert);
    if (const auto* gap = std::get_if<NotAssessed>(&uses)) return missing(id, subject, gap->why, gap->remedy);
    const double use =
        resistances::interaction_utilization(std::get<resistances::Uses>(uses), facts.rules.headed, silent).value();
    if (!(use >= 0.0)) return missing(id, subject, "the interaction is not a usable number", {});
    if (use > most) {
      most = use;
      worst = s;
    }
  }
  trace.about([&] {
    return fmt::format("{}: {}, insert {}, {}", plan::word_for(facts.stage.kind), id, subject, situations->at(worst).name);
  });
  const auto governing = std::get<resistances::Uses>(largest(facts, worst, insert));
  const Ratio use = resistances::interaction_utilization(governing, facts.rules.headed, trace);
  Finding finding = compared<Ratio>(id, subject, Demand<Ratio>{use}, Resistance<Ratio>{Ratio{1.0}}, 1.0,
                                    facts.rules.headed.en ? "EN 1992-4 table 7.3" : "ACI 318-19 17.8");
  finding.situation = situations->at(worst).name;
  if (finding.result == Result::fail && facts.in_words) {
    finding.text = fmt::format("tension uses {} and shear {} of insert {}, together more than it holds",
                               print_utilization(std::max(governing.steel_tension, governing.concrete_tension).value()),
                               print_utilization(std::max(governing.steel_shear, governing.concrete_shear).value()), subject);
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
