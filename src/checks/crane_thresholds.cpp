// Close to the crane's rating a lift has a written plan.
//
//   W_hook <= u_plan * rated, or critical_lift_plan is stated; above u_crit * rated a note says that the lift
//   is critical
//
// Source   "crane_planned_above" and "crane_critical_above" of the rule set. Above the rating: rule
//          crane-overload. Then this rule has nothing to add.
// Absent   critical_lift_plan above u_plan: HOLD. No hook load, no rating: HOLD.

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

Finding thresholds(const StageFacts& facts, const LiftingCrane& lifting, Trace& trace) {
  constexpr std::string_view id = "crane-thresholds";
  const plan::Crane* crane = lifting.crane;
  const std::string& subject = lifting.id;
  const auto& planned = facts.rules.crane_planned_above;
  const auto& critical = facts.rules.crane_critical_above;
  const auto hook = crane_hook_load(facts, lifting);
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) return missing(id, subject, gap->why, gap->remedy);
  if (!crane->rated)
    return missing(id, subject, "the crane's rating is not in the plan", "[[crane]] rated = \"...\"");

  const Demand<Force> load{std::get<Force>(hook)};
  const auto share_of_rating = [&](const Sourced<Ratio>& share, const char* symbol, const char* words) {
    trace.add([&] {
      return Step{
          .words = words,
          .result = {std::string("W_") + symbol, in(kN, Force{share.value * *crane->rated}), "kN"},
          .formula = fmt::format("u_{} * rated", symbol),
          .given = {{std::string("u_") + symbol, share.value.value(), "1"},
                    {"rated", in(kN, *crane->rated), "kN"}},
          .clause = share.source.locator,
          .sources = {share.source}};
    });
    return Resistance<Force>{share.value * *crane->rated};
  };
  Finding finding =
      compared<Force>(id, subject, load, share_of_rating(planned, "plan", "a written plan from here"), 1.0,
                      citation(planned.source));
  const Finding above =
      compared<Force>(id, subject, load, share_of_rating(critical, "crit", "critical lift from here"), 1.0,
                      citation(critical.source));
  finding.utilization.reset();  // crane-overload has the row
  if (finding.result == Result::missing) return finding;
  if (above.result == Result::missing) return above;
  if (compare<Force>(load, Resistance<Force>{*crane->rated}).result == Result::fail)
    return passed(id, subject);  // crane-overload fails: no plan mends that
  const auto percent = [](const Sourced<Ratio>& share) {
    return fmt::format("{:g}", 100.0 * share.value.value());
  };
  if (finding.result == Result::pass) return finding;
  if (!is_stated(facts.stage.critical_lift_plan)) {
    finding.result = Result::missing;
    finding.text =
        fmt::format("more than {} % of the rating of crane {} hangs on it, and no written plan is named",
                    percent(above.result == Result::fail ? critical : planned), subject);
    finding.remedy = "[[stage]] critical_lift_plan = \"...\": its number; or a crane of more capacity";
    return finding;
  }
  finding.result = above.result == Result::fail ? Result::note : Result::pass;
  if (finding.result == Result::note)
    finding.text = fmt::format("more than {} % of the rating of crane {}: a critical lift, by plan {}",
                               percent(critical), subject, facts.stage.critical_lift_plan);
  return finding;
}

}  // namespace

std::vector<Finding> crane_thresholds(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  for (const LiftingCrane& crane : cranes_of(facts)) findings.push_back(thresholds(facts, crane, trace));
  return findings;
}

}  // namespace firstpick::checks
