// A sheave pulls where it hangs with no more than its plate says.
//
//   T <= rated        T: tension of the leg to the sheave, the largest over all load sets and sharings
//
// Source   statics: the leg carries both parts of the rope and the sheave's own weight.
// Absent   no rating from the plate, no weight: HOLD.

#include <algorithm>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

Force asked_of(const StageFacts& facts, const Situation& situation, std::size_t carrier) {
  Force sum{};
  for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i) {
    const plan::Leg& leg = facts.rigging->legs[i];
    const auto end = plan::carrier_end(*facts.rigging, leg.to);
    if (end && end->carrier == carrier) sum += situation.legs.at(i).tension;
  }
  return sum;
}

}  // namespace

std::vector<Finding> sheave_overload(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "sheave-overload";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t i = 0; i < facts.rigging->sheaves.size(); ++i) {
    const auto& sheave = facts.rigging->sheaves[i];
    Outcome<Demand<Force>> demand = NotAssessed{"no load set acts in this stage", {}};
    std::string worst;
    if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) {
      demand = *gap;
    } else {
      Force most{};
      for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
        const Force asked = asked_of(facts, situation, facts.rigging->beams.size() + i);
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
        fmt::format("the rating of sheave '{}' is not in the plan", sheave.id), "[[rigging.sheave]] rated = \"...\""};
    if (sheave.rated) rated = Resistance<Force>{*sheave.rated};
    Finding finding = compared<Force>(id, sheave.id, demand, rated, 1.0, "its plate");
    finding.situation = worst;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("{} pulls sheave {}, its plate says {}",
                                 firstpick::print(std::get<Demand<Force>>(demand).value, units, Rounding::up),
                                 sheave.id, firstpick::print(*sheave.rated, units, Rounding::down));
      finding.remedy = "a stronger sheave, or less load";
    }
    if (finding.utilization)
      trace.add([&] {
        return Step{.words = "use of sheave " + sheave.id,
                    .result = {"u", *finding.utilization, "1"},
                    .formula = "V / V_rated",
                    .given = {{"V", in(kN, std::get<Demand<Force>>(demand).value), "kN"},
                              {"V_rated", in(kN, *sheave.rated), "kN"}},
                    .clause = "its plate",
                    .sources = {}};
      });
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
