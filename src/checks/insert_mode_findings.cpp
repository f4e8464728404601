#include "checks/insert_mode_findings.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/mode_factor.hpp"

namespace firstpick::checks {

namespace {

std::string names(const StageFacts& facts, const std::vector<std::size_t>& together) {
  std::string text;
  for (const std::size_t i : together) text += (text.empty() ? "" : " + ") + facts.plan.inserts.at(i).id;
  return text;
}

// Bars hold what would break out: the concrete is not what was judged.
bool is_about_bars(const ModeRule& rule, const ModeCheck& check, const StageFacts& facts, std::size_t insert) {
  const auto& inserts = facts.plan.inserts;
  if (rule.mode != Mode::breakout) return false;
  if (check.together.empty()) return inserts[insert].bars.has_value();
  return std::ranges::all_of(check.together, [&](std::size_t i) { return inserts.at(i).bars.has_value(); });
}

Finding from(const ModeRule& rule, const ModeCheck& check, const StageFacts& facts, std::size_t insert,
             const InsertSituation& situation) {
  const std::string& subject = facts.plan.inserts[insert].id;
  const UnitSystem units = facts.plan.piece.units;
  Finding finding{.rule = rule.id, .subject = subject, .result = check.comparison.result};
  const bool about_bars = is_about_bars(rule, check, facts, insert);
  finding.clause = !about_bars                ? clause_of(rule.mode, facts.rules)
                   : facts.rules.headed.en ? "EN 1992-4 7.2.1.9"
                                           : "ACI 318-19 17.5.2.1";
  finding.utilization = check.comparison.utilization;
  finding.text = check.comparison.why;
  finding.remedy = check.comparison.remedy;
  if (check.demand) finding.demand = *check.demand;
  if (!check.together.empty()) finding.together = names(facts, check.together);
  if (!check.applies) {
    finding.text = "does not apply to this insert in this concrete";
    return finding;
  }
  finding.limit = 1.0;
  if (!is_assessed(facts.anchorage.headed.at(insert))) return finding;
  const double factor = mode_factor(rule.mode, facts, insert);
  finding.factor = factor;
  if (check.nominal) {
    finding.nominal = *check.nominal;
    finding.capacity = *check.nominal / factor;
  }
  if (finding.result == Result::fail && facts.in_words) {
    const std::string who = check.together.empty() ? subject : names(facts, check.together) + " together";
    finding.text = fmt::format("{} at {}: {} asked, {} allowed ({} nominal over {})",
                               about_bars ? "the bars about the insert hold too little" : rule.fails, who,
                               firstpick::print(*check.demand, units, Rounding::up),
                               firstpick::print(Force{*check.nominal / factor}, units, Rounding::down),
                               firstpick::print(*check.nominal, units, Rounding::down), print_number(factor, 2));
    if (situation.some_legs_only || situation.turning) finding.text += fmt::format(", {}", situation.name);
    finding.remedy = remedy_in(situation, about_bars ? "more strength before lifting, more or longer bars, or steeper legs"
                                                     : rule.remedy);
  }
  return finding;
}

// The last two lines of the calculation: what is asked, and its share of what is allowed.
void record_use(const ModeRule& rule, const Finding& finding, const ModeCheck& check, const StageFacts& facts,
                std::size_t insert, Trace& trace) {
  if (!trace.is_recording() || !finding.utilization || !check.demand || !check.nominal) return;
  const ModeFactor n = mode_factor(rule.mode, facts, insert, trace);
  const std::string who = check.together.empty() ? finding.subject : names(facts, check.together) + " together";
  trace.add([&] {
    return Step{.words = fmt::format("asked of {}, {}", who, finding.situation),
                .result = {"S", in(kN, *check.demand), "kN"},
                .clause = "statics"};
  });
  trace.add([&] {
    return Step{.words = fmt::format("share of what is allowed: {} behind the {} on inserts", finding.rule,
                                     facts.rules.headed.en ? "partial factor" : "factor"),
                .result = {"u", *finding.utilization, "1"},
                .formula = fmt::format("S / (R / {})", n.symbol),
                .given = {{"S", in(kN, *check.demand), "kN"}, {"R", in(kN, *check.nominal), "kN"}, {n.symbol, n.value, "1"}},
                .clause = n.clause,
                .sources = n.sources};
  });
}

}  // namespace

std::string remedy_in(const InsertSituation& situation, std::string_view remedy) {
  return (situation.some_legs_only ? "gear that shares the load by itself (equalised), " : "") + std::string(remedy);
}

std::vector<Finding> findings_of(const ModeRule& rule, const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  for (std::size_t insert = 0; insert < facts.plan.inserts.size(); ++insert) {
    const plan::Insert& one = facts.plan.inserts[insert];
    if (one.kind != "headed") continue;
    const auto* situations = std::get_if<std::vector<InsertSituation>>(&facts.insert_situations);
    if (!situations || situations->empty()) {
      const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations);
      findings.push_back(missing(rule.id, one.id, gap ? gap->why : "no situation was computed", gap ? gap->remedy : ""));
      continue;
    }
    std::size_t worst = 0;
    for (std::size_t s = 1; s < situations->size(); ++s)
      if (less_severe(facts.modes.at(worst, insert, rule.mode), facts.modes.at(s, insert, rule.mode))) worst = s;
    trace.about([&] {
      return fmt::format("{}: {}, insert {}, {}", plan::word_for(facts.stage.kind), rule.id, one.id,
                         situations->at(worst).name);
    });
    if (trace.is_recording()) check_mode(rule.mode, facts, situations->at(worst), insert, trace);
    Finding finding = from(rule, facts.modes.at(worst, insert, rule.mode), facts, insert, situations->at(worst));
    finding.situation = situations->at(worst).name;
    record_use(rule, finding, facts.modes.at(worst, insert, rule.mode), facts, insert, trace);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
