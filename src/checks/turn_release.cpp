// A piece does not swing far as it comes free of its tilting table.
//
//   psi <= limit        psi: angle between how it leans on the table and how it hangs
//
// Source   statics (the attitude is that of demands/hanging.cpp); the limit is "release_swing" of the rule set, a choice.
//          Where form parts may be off by then, with and without them.
// Passes where nothing comes off a table. Missing: the turn or the hanging piece is not assessed.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> turn_release(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "turn-release";
  const std::string& mark = facts.plan.piece.mark;
  const auto& turn = facts.stage.turn;
  if (facts.stage.kind != plan::StageKind::turn || (turn && turn->method && turn->method != plan::TurnMethod::table))
    return {passed(id, mark)};
  if (!facts.turning || !turn) return {missing(id, mark, how_is_missing, turn_to_write)};
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return {missing(id, mark, gap->why, gap->remedy)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging)) return {missing(id, mark, gap->why, gap->remedy)};

  const Direction leans = demands::up_at(std::get<TurnSweep>(*facts.turning).piece.frame, *turn->table_angle);
  Angle swing{};
  const auto look = [&](const demands::Hanging& hanging) {
    const Angle one = std::atan2(norm(cross(leans, hanging.up)), dot(leans, hanging.up)) * radian;
    if (is_finite(swing) && !(one <= swing)) swing = one;  // what is not a number stays
  };
  look(std::get<demands::Hanging>(facts.hanging));
  for (const demands::Hanging& without : facts.without_parts) look(without);

  const auto& limit = facts.rules.release_swing;
  const UnitSystem units = facts.plan.piece.units;
  trace.add([&] {
    return Step{.words = "how far the piece turns from the table to how it hangs",
                .result = {"psi", in(deg, swing), "deg"},
                .clause = "statics",
                .sources = {limit.source}};
  });
  Finding finding = compared<Angle>(id, mark, Demand<Angle>{swing}, Resistance<Angle>{limit.value}, 1.0,
                                    "rule set " + facts.rules.id);
  if (finding.result == Result::fail) {
    finding.text = fmt::format("it comes off the table at {} and swings {} to how it hangs, {} is the most",
                               print(*turn->table_angle, units), print(swing, units, Rounding::up),
                               print(limit.value, units, Rounding::down));
    finding.remedy = "a table brought up farther before the crane takes it, or turn it about its edge on the ledge "
                     "(method = \"edge\")";
  }
  return {finding};
}

}  // namespace firstpick::checks
