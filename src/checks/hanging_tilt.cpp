// The piece hangs level enough, free of the form; so does each beam above it.
//
//   tilt <= limit        tilt: angle between what was up before the lift and the vertical, as it hangs
//
// Where form parts may be off by now the larger tilt counts, with them or without.
// In a turn: off a table, from the end of the turn; between two hooks, how far it leans out of their plane; about an edge
// the piece does not hang, and passes.
//
// Source   "maximum_tilt" of the rule set, a choice; the attitude is that of demands/hanging.cpp.
// Missing  the statics are not assessed: HOLD.

#include <algorithm>

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

// What is not a number is larger than any.
void keep_larger(Angle& largest, Angle other) {
  if (!(other <= largest) && is_finite(largest)) largest = other;
}

// With form parts, and without those that may be off.
Angle largest_tilt(const StageFacts& facts) {
  Angle largest = std::get<demands::Hanging>(facts.hanging).tilt;
  for (const demands::Hanging& without : facts.without_parts) keep_larger(largest, without.tilt);
  return largest;
}

std::vector<Finding> beams(const StageFacts& facts) {
  std::vector<Finding> findings;
  const auto* hanging = std::get_if<demands::Hanging>(&facts.hanging);
  if (!hanging || !facts.rigging) return findings;
  const auto& limit = facts.rules.maximum_tilt;
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t i = 0; i < facts.rigging->beams.size() && i < hanging->carriers.size(); ++i) {
    const std::string& beam = facts.rigging->beams[i].id;
    Angle tilt = hanging->carriers[i].tilt;
    for (const demands::Hanging& without : facts.without_parts)
      if (i < without.carriers.size()) keep_larger(tilt, without.carriers[i].tilt);
    findings.push_back(compared<Angle>("hanging-tilt", beam, Demand<Angle>{tilt}, Resistance<Angle>{limit.value}, 1.0,
                                       "rule set " + facts.rules.id));
    if (findings.back().result != Result::fail) continue;
    findings.back().text = fmt::format("beam {} hangs {} out of level, {} is the most", beam,
                                       firstpick::print(tilt, units, Rounding::up),
                                       firstpick::print(limit.value, units, Rounding::down));
    findings.back().remedy = "the hook and the loads below the beam in balance about its middle";
  }
  return findings;
}

}  // namespace

std::vector<Finding> hanging_tilt(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "hanging-tilt";
  const std::string& subject = facts.stage.rigging;
  const auto& limit = facts.rules.maximum_tilt;
  const UnitSystem units = facts.plan.piece.units;
  Outcome<Demand<Angle>> tilt = NotAssessed{};
  const auto* sweep = facts.turning ? std::get_if<TurnSweep>(&*facts.turning) : nullptr;
  if (sweep && sweep->piece.method == plan::TurnMethod::edge) return {passed(id, subject)};
  if (sweep && sweep->piece.method == plan::TurnMethod::two_hooks) tilt = Demand<Angle>{sweep->sideways};
  else if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging)) tilt = *gap;
  else tilt = Demand<Angle>{largest_tilt(facts)};
  trace.add([&] {
    return Step{.words = "how far out of level the piece may hang",
                .result = {"theta_max", in(deg, limit.value), "deg"},
                .formula = {},
                .given = {},
                .clause = "rule set " + facts.rules.id,
                .sources = {limit.source}};
  });
  Finding finding =
      compared<Angle>(id, subject, tilt, Resistance<Angle>{limit.value}, 1.0, "rule set " + facts.rules.id);
  if (finding.result == Result::fail) {
    finding.text = fmt::format("the piece hangs {} out of level, {} is the most",
                               firstpick::print(std::get<Demand<Angle>>(tilt).value, units, Rounding::up),
                               firstpick::print(limit.value, units, Rounding::down));
    const bool sheaves = facts.rigging && (!facts.rigging->equalised.empty() || !facts.rigging->sheaves.empty());
    finding.remedy = sheaves ? "fewer equalised legs, which let the piece turn; legs that bring the hook over the "
                               "centre of gravity"
                             : "legs that bring the hook over the centre of gravity";
  }
  std::vector<Finding> findings{std::move(finding)};
  for (Finding& beam : beams(facts)) findings.push_back(std::move(beam));
  return findings;
}

}  // namespace firstpick::checks
