// The hook load, with everything that hangs on the hook, is not above the crane's rating.
//
//   W_hook = W + W_attached (+ adhesion, by the rule set) + rigging + block <= rated
//
// Source   hooks, blocks, slings and all handling devices count as load: US Army TM 5-3810-305-10. The rating is for a
//          static load: the dynamic factor is not applied to it ("crane_load" of the rule set says what is).
// Turn between two hooks: the first is compared with all of the piece, which it carries in the end, the second with its
//          largest share (tail_crane.hpp).
// Absent   no crane, no rating, no weight of the rigging or of the block: HOLD.

#include <fmt/format.h>

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"
#include "checks/tail_crane.hpp"

namespace firstpick::checks {

Outcome<Force> crane_hook_load(const StageFacts& facts) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (!facts.rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  if (!facts.rigging->weight)
    return NotAssessed{fmt::format("the weight of rigging '{}' is not in the plan", facts.rigging->id),
                       "[[rigging]] weight = \"...\": slings, shackles and rings below the hook"};
  if (!facts.crane) return NotAssessed{"the stage names no crane", "[[stage]] crane = \"...\""};
  if (!facts.crane->block)
    return NotAssessed{fmt::format("the weight of the hook block of crane '{}' is not in the plan", facts.crane->id),
                       "[[crane]] block = \"...\"; \"0 lb\" where the rating is net of the block"};
  return Force{std::get<loads::StageLoad>(facts.load).crane_load + *facts.rigging->weight + *facts.crane->block};
}

std::vector<Finding> crane_overload(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "crane-overload";
  const std::string subject = facts.crane ? facts.crane->id : facts.stage.crane;
  const UnitSystem units = facts.plan.piece.units;
  const auto hook = crane_hook_load(facts);
  Outcome<Demand<Force>> demand = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) demand = *gap;
  else demand = Demand<Force>{std::get<Force>(hook)};
  Outcome<Resistance<Force>> rated = NotAssessed{"the crane's rating is not in the plan", "[[crane]] rated = \"...\""};
  if (facts.crane && facts.crane->rated) rated = Resistance<Force>{*facts.crane->rated};

  if (is_assessed(hook))
    trace.add([&] {
      const auto& load = std::get<loads::StageLoad>(facts.load);
      return Step{.words = "everything that hangs on the crane",
                  .result = {"W_hook", in(kN, std::get<Force>(hook)), "kN"},
                  .formula = "W_crane + W_rigging + W_block",
                  .given = {{"W_crane", in(kN, load.crane_load), "kN"},
                            {"W_rigging", in(kN, *facts.rigging->weight), "kN"},
                            {"W_block", in(kN, *facts.crane->block), "kN"}},
                  .clause = facts.rules.crane_load.source.locator,
                  .sources = {facts.rules.crane_load.source}};
    });
  Finding finding = compared<Force>(id, subject, demand, rated, 1.0, "crane rating");
  if (finding.result == Result::fail) {
    finding.text = fmt::format("{} hangs on crane {}, rated {}",
                               firstpick::print(std::get<Force>(hook), units, Rounding::up), subject,
                               firstpick::print(*facts.crane->rated, units, Rounding::down));
    finding.remedy = "a crane of more capacity, or less grip of the form";
  }
  if (turn_between_two_hooks(facts.stage)) return {finding, tail_crane_finding(id, facts, trace)};
  return {finding};
}

}  // namespace firstpick::checks
