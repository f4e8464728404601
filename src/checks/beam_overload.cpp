// What hangs below a lifting beam, spreader or frame is not above its plate.
//
//   V <= rated        V: vertical pull of the legs below it, the largest over all load sets and sharings
//
// Source   statics; 29 CFR 1926.251(a)(4): custom lifting accessories are marked with their safe working load.
// Absent   no rating from the plate, no weight: HOLD.
// Limits   the plate's own conditions (angle of the slings above it, which holes) are not known here.

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "checks/rule.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

Force asked_of(const StageFacts& facts, const Situation& situation, std::size_t carrier) {
  Force sum{};
  for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i) {
    const plan::Leg& leg = facts.rigging->legs[i];
    const auto end = plan::carrier_end(*facts.rigging, leg.from);
    if (end && end->carrier == carrier)
      sum += situation.legs.at(i).tension * std::sin(in(radian, situation.legs.at(i).angle_from_horizontal));
  }
  return sum;
}

}  // namespace

std::vector<Finding> beam_overload(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "beam-overload";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t i = 0; i < facts.rigging->beams.size(); ++i) {
    const auto& beam = facts.rigging->beams[i];
    Outcome<Demand<Force>> demand = NotAssessed{"no load set acts in this stage", {}};
    std::string worst;
    if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) {
      demand = *gap;
    } else {
      Force most{};
      for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
        const Force asked = asked_of(facts, situation, i);
        if (!is_finite(asked)) {
          demand = NotAssessed{"a leg's tension is not a usable number", {}};
          worst.clear();
          break;
        }
        if (!worst.empty() && !(asked > most)) continue;
        most = asked;
        worst = situation.name;
        demand = Demand<Force>{most};
      }
    }
    Outcome<Resistance<Force>> rated = NotAssessed{
        fmt::format("the rating of beam '{}' is not in the plan", beam.id), "[[rigging.beam]] rated = \"...\""};
    if (beam.rated) rated = Resistance<Force>{*beam.rated};
    Finding finding = compared<Force>(id, beam.id, demand, rated, 1.0, "its plate");
    finding.situation = worst;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("{} hangs below beam {}, its plate says {}",
                                 firstpick::print(std::get<Demand<Force>>(demand).value, units, Rounding::up),
                                 beam.id, firstpick::print(*beam.rated, units, Rounding::down));
      finding.remedy = "a stronger beam, or less load";
    }
    if (finding.utilization)
      trace.add([&] {
        return Step{.words = "use of beam " + beam.id,
                    .result = {"u", *finding.utilization, "1"},
                    .formula = "V / V_rated",
                    .given = {{"V", in(kN, std::get<Demand<Force>>(demand).value), "kN"},
                              {"V_rated", in(kN, *beam.rated), "kN"}},
                    .clause = "its plate",
                    .sources = {}};
      });
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
