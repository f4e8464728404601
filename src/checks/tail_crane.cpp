#include "checks/tail_crane.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace firstpick::checks {

namespace {

struct TailLoad {
  Force piece{}, rigging{}, block{};
};

Outcome<TailLoad> tail_load(const StageFacts& facts, const plan::Turn& turn, const plan::Crane& crane) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (!facts.turning) return NotAssessed{how_is_missing, turn_to_write};
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return *gap;
  const auto rigging = std::ranges::find(facts.plan.riggings, turn.tail_rigging, &plan::Rigging::id);
  if (rigging == facts.plan.riggings.end() || !rigging->weight)
    return NotAssessed{"the weight of the tail rigging is not in the plan", "[[rigging]] weight = \"...\""};
  if (!crane.block)
    return NotAssessed{fmt::format("the weight of the hook block of crane '{}' is not in the plan", crane.id),
                       "[[crane]] block = \"...\"; \"0 lb\" where the rating is net of the block"};
  const double share = std::get<TurnSweep>(*facts.turning).tail.share;
  return TailLoad{share * std::get<loads::StageLoad>(facts.load).crane_load, *rigging->weight, *crane.block};
}

}  // namespace

const plan::Turn* turn_between_two_hooks(const plan::Stage& stage) {
  if (stage.kind != plan::StageKind::turn || !stage.turn) return nullptr;
  return stage.turn->method == plan::TurnMethod::two_hooks ? &*stage.turn : nullptr;
}

Finding tail_crane_finding(std::string_view rule, const StageFacts& facts, Trace& trace) {
  const plan::Turn& turn = *facts.stage.turn;
  const auto crane = std::ranges::find(facts.plan.cranes, turn.tail_crane, &plan::Crane::id);
  if (crane == facts.plan.cranes.end())
    return missing(rule, turn.tail_crane, "the crane of the second hook is not in the plan",
                   "[stage.turn] tail_crane = \"...\"");
  if (crane->id == facts.stage.crane)
    return missing(rule, crane->id, "both hooks of the turn are the same crane",
                   "a [[crane]] of its own for each hoist, with its own rating");
  const auto load = tail_load(facts, turn, *crane);
  Outcome<Demand<Force>> demand = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&load)) demand = *gap;
  else {
    const auto& l = std::get<TailLoad>(load);
    demand = Demand<Force>{l.piece + l.rigging + l.block};
    trace.add([&] {
      return Step{.words = "everything that hangs on the second hook, at its largest",
                  .result = {"W_tail_hook", in(kN, std::get<Demand<Force>>(demand).value), "kN"},
                  .formula = "W_tail + W_tail_rigging + W_tail_block",
                  .given = {{"W_tail", in(kN, l.piece), "kN"},
                            {"W_tail_rigging", in(kN, l.rigging), "kN"},
                            {"W_tail_block", in(kN, l.block), "kN"}},
                  .clause = "statics",
                  .sources = {facts.rules.crane_load.source}};
    });
  }
  Outcome<Resistance<Force>> rated = NotAssessed{"the crane's rating is not in the plan", "[[crane]] rated = \"...\""};
  if (crane->rated) rated = Resistance<Force>{*crane->rated};
  Finding finding = compared<Force>(rule, crane->id, demand, rated, 1.0, "crane rating");
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("{} hangs on the second hook, crane {}, rated {}",
                               print(std::get<Demand<Force>>(demand).value, units, Rounding::up), crane->id,
                               print(*crane->rated, units, Rounding::down));
    finding.remedy = "a stronger second hoist, or its picks farther from the centre of gravity";
  }
  return finding;
}

}  // namespace firstpick::checks
