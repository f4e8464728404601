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

void record(const HookLoad& load, const plan::Crane& crane, std::size_t cranes, const Sourced<tables::CraneLoad>& choice,
            Trace& trace) {
  trace.add([&] {
    Step step{.words = cranes > 1 ? "everything that hangs on crane " + crane.id : "everything that hangs on the crane",
              .result = {"W_hook", in(kN, load.total()), "kN"},
              .formula = "W_crane + W_rigging + W_block",
              .given = {{"W_crane", in(kN, load.piece), "kN"},
                        {"W_rigging", in(kN, load.rigging), "kN"},
                        {"W_block", in(kN, load.block), "kN"}},
              .clause = choice.source.locator,
              .sources = {choice.source}};
    if (load.carriers > Force{} || cranes > 1) {
      step.formula = "s * (W_crane + W_carriers) + W_rigging + W_block";
      step.given.insert(step.given.begin(), {{"s", load.share, "1"}});
      step.given.push_back({"W_carriers", in(kN, load.carriers), "kN"});
    }
    return step;
  });
}

Finding judged(const StageFacts& facts, const LiftingCrane& lifting, std::size_t cranes, Trace& trace) {
  constexpr std::string_view id = "crane-overload";
  const plan::Crane* crane = lifting.crane;
  const std::string& subject = lifting.id;
  const UnitSystem units = facts.plan.piece.units;
  const auto hook = hook_load(facts, lifting);
  Outcome<Demand<Force>> demand = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) demand = *gap;
  else demand = Demand<Force>{std::get<HookLoad>(hook).total()};
  Outcome<Resistance<Force>> rated = NotAssessed{"the crane's rating is not in the plan", "[[crane]] rated = \"...\""};
  if (crane && crane->rated) rated = Resistance<Force>{*crane->rated};

  if (const auto* load = std::get_if<HookLoad>(&hook)) record(*load, *crane, cranes, facts.rules.crane_load, trace);
  Finding finding = compared<Force>(id, subject, demand, rated, 1.0, "crane rating");
  if (finding.result == Result::fail) {
    finding.text = fmt::format("{} hangs on crane {}, rated {}",
                               firstpick::print(std::get<HookLoad>(hook).total(), units, Rounding::up), subject,
                               firstpick::print(*crane->rated, units, Rounding::down));
    finding.remedy = lifting.second ? "a stronger second hoist, or its picks farther from the centre of gravity"
                                    : "a crane of more capacity, or less grip of the form";
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
