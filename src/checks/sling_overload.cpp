// No leg carries more than the tag of its sling says.
//
//   T <= rated        T: largest tension of the leg over all load sets and sharings of the stage
//
// Source   29 CFR 1926.251(a)(2): the tag governs; there is no capacity table any more. Named where the rule set rests on 29 CFR
//          1926; that the tag governs is told in any case.
// Absent   no gear named, or no rating from the tag: HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "checks/sling_of.hpp"
#include "checks/worst_leg.hpp"

namespace firstpick::checks {

namespace {

// A rule set whose factor on hardware is that of 29 CFR 1926 is held to its other clauses, too.
bool rests_on_29_cfr_1926(const tables::RuleSet& rules) {
  return rules.hardware_factor.source.id.starts_with("29-cfr-1926");
}

}  // namespace

std::vector<Finding> sling_overload(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "sling-overload";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  findings.reserve(facts.rigging->legs.size());
  const UnitSystem units = facts.plan.piece.units;
  const std::string clause = rests_on_29_cfr_1926(facts.rules) ? "29 CFR 1926.251(a)(2)" : "marking of the sling";
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    const std::string& subject = facts.rigging->legs[leg].to;
    const auto sling = sling_of(facts, leg);
    const auto worst = most_tension(facts.gear_situations, leg);
    const Outcome<Demand<Force>> demand = demand_of(worst);
    Outcome<Resistance<Force>> rated = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&sling)) rated = *gap;
    else rated = Resistance<Force>{*std::get<const plan::Sling*>(sling)->rated};

    Finding finding = compared<Force>(id, subject, demand, rated, 1.0, clause + ": the tag governs");
    if (const auto* w = std::get_if<WorstLeg>(&worst)) finding.situation = w->situation;
    if (finding.result == Result::fail) {
      const auto& w = std::get<WorstLeg>(worst);
      finding.text = fmt::format("the leg to {} pulls {} at {} from horizontal, its tag says {}", subject,
                                 firstpick::print(w.tension, units, Rounding::up),
                                 firstpick::print(w.angle_from_horizontal, units),
                                 firstpick::print(std::get<Resistance<Force>>(rated).value, units, Rounding::down));
      if (facts.turning) finding.text += ", " + w.situation;
      finding.remedy = "longer legs (steeper), a stronger sling, or gear that shares the load by itself (equalised)";
    }
    if (finding.utilization)
      trace.add([&] {
        return Step{.words = fmt::format("use of the leg to {}", subject),
                    .result = {"T/T_rated", *finding.utilization, "1"},
                    .formula = "T / T_rated",
                    .given = {{"T", in(kN, std::get<Demand<Force>>(demand).value), "kN"},
                              {"T_rated", in(kN, std::get<Resistance<Force>>(rated).value), "kN"}},
                    .clause = clause,
                    .sources = {}};
      });
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
