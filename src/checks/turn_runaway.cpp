// A piece that is turned about an edge does not run away over it.
//
//   t_end - t_b <= limit       t_b = atan(c / z): there the centre of gravity stands plumb over the edge and the hook goes
//                              slack; from there to the end of the turn the piece turns by itself
//
// Source   statics (demands/turning.hpp); the limit is "free_turn" of the rule set, a choice.
// Missing  a turn backwards that starts past the balance: a plumb hook cannot pull the piece over it.
// Passes where nothing turns about an edge on the ground.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> turn_runaway(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "turn-runaway";
  const std::string& mark = facts.plan.piece.mark;
  const auto& turn = facts.stage.turn;
  if (facts.stage.kind != plan::StageKind::turn || (turn && turn->method && turn->method != plan::TurnMethod::edge))
    return {passed(id, mark)};
  if (!facts.turning || !turn) return {missing(id, mark, how_is_missing, turn_to_write)};
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return {missing(id, mark, gap->why, gap->remedy)};
  const auto& sweep = std::get<TurnSweep>(*facts.turning);
  const UnitSystem units = facts.plan.piece.units;
  if (turn->to < turn->from && sweep.falls_free > Angle{})
    return {missing(id, mark,
                    fmt::format("the piece stands past its balance at {}: a plumb hook cannot pull it over the edge",
                                print(sweep.balance, units)),
                    "[stage.turn] from = an angle short of the balance, with how it comes there as a stage of its own")};
  const auto& limit = facts.rules.free_turn;
  trace.add([&] {
    return Step{.words = "angle at which the centre of gravity stands over the edge",
                .result = {"t_b", in(deg, sweep.balance), "deg"},
                .clause = "statics",
                .sources = {limit.source}};
  });
  Finding finding = compared<Angle>(id, mark, Demand<Angle>{sweep.falls_free}, Resistance<Angle>{limit.value}, 1.0,
                                    "rule set " + facts.rules.id);
  if (finding.result == Result::fail) {
    finding.text = fmt::format("past {} the hook is slack and the piece falls over its edge by itself, {} on; {} is "
                               "the most", print(sweep.balance, units), print(sweep.falls_free, units, Rounding::up),
                               print(limit.value, units, Rounding::down));
    finding.remedy = "end the turn before the balance and lift the piece clear, or turn it between two hooks";
  }
  return {finding};
}

}  // namespace firstpick::checks
