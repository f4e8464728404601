// The hook load, with everything that hangs on the hook, is not above the crane's rating; of two cranes, each.
//
//   W_hook <= rated        W_hook: crane_hook_load.cpp
//
// Source   the rating is for a static load: the dynamic factor is not applied to it ("crane_load" of the rule set
//          says what is).
// Absent   no crane, no rating, no weight of the rigging or of the block: HOLD.

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

void record(const StageFacts& facts, const plan::Crane& crane, Force hook, std::size_t cranes, Trace& trace) {
  trace.add([&] {
    const auto& load = std::get<loads::StageLoad>(facts.load);
    Force carriers{};
    for (const plan::Beam& beam : facts.rigging->beams) carriers += *beam.weight;
    for (const plan::Sheave& sheave : facts.rigging->sheaves) carriers += *sheave.weight;
    const Force rigging = *facts.rigging->weight, block = *crane.block;
    const double share = (hook - rigging - block) / (load.crane_load + carriers);
    Step step{.words = cranes > 1 ? "everything that hangs on crane " + crane.id : "everything that hangs on the crane",
              .result = {"W_hook", in(kN, hook), "kN"},
              .formula = "W_crane + W_rigging + W_block",
              .given = {{"W_crane", in(kN, load.crane_load), "kN"},
                        {"W_rigging", in(kN, rigging), "kN"},
                        {"W_block", in(kN, block), "kN"}},
              .clause = facts.rules.crane_load.source.locator,
              .sources = {facts.rules.crane_load.source}};
    if (carriers > Force{} || cranes > 1) {
      step.formula = "s * (W_crane + W_carriers) + W_rigging + W_block";
      step.given.insert(step.given.begin(), {{"s", share, "1"}});
      step.given.push_back({"W_carriers", in(kN, carriers), "kN"});
    }
    return step;
  });
}

Finding judged(const StageFacts& facts, const LiftingCrane& lifting, std::size_t cranes, Trace& trace) {
  constexpr std::string_view id = "crane-overload";
  const plan::Crane* crane = lifting.crane;
  const std::string& subject = lifting.id;
  const UnitSystem units = facts.plan.piece.units;
  const auto hook = crane_hook_load(facts, lifting);
  Outcome<Demand<Force>> demand = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) demand = *gap;
  else demand = Demand<Force>{std::get<Force>(hook)};
  Outcome<Resistance<Force>> rated = NotAssessed{"the crane's rating is not in the plan", "[[crane]] rated = \"...\""};
  if (crane && crane->rated) rated = Resistance<Force>{*crane->rated};

  if (is_assessed(hook)) record(facts, *crane, std::get<Force>(hook), cranes, trace);
  Finding finding = compared<Force>(id, subject, demand, rated, 1.0, "crane rating");
  if (finding.result == Result::fail) {
    finding.text = fmt::format("{} hangs on crane {}, rated {}",
                               firstpick::print(std::get<Force>(hook), units, Rounding::up), subject,
                               firstpick::print(*crane->rated, units, Rounding::down));
    finding.remedy = "a crane of more capacity, or less grip of the form";
  }
  return finding;
}

}  // namespace

std::vector<Finding> crane_overload(const StageFacts& facts, Trace& trace) {
  const auto cranes = cranes_of(facts);
  std::vector<Finding> findings;
  for (const LiftingCrane& crane : cranes) findings.push_back(judged(facts, crane, cranes.size(), trace));
  return findings;
}

}  // namespace firstpick::checks
