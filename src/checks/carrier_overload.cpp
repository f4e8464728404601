#include "checks/carrier_overload.hpp"

#include <fmt/format.h>

namespace firstpick::checks {

namespace {

struct Asked {
  Outcome<Demand<Force>> demand = NotAssessed{"no load set acts in this stage", {}};
  std::string situation;
};

Asked most_asked(const CarrierRule& rule, const StageFacts& facts, std::size_t carrier) {
  Asked worst;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) return {*gap, {}};
  Force most{};
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    const Force asked = rule.asked_of(facts, situation, carrier);
    if (!is_finite(asked)) return {NotAssessed{"a leg's tension is not a usable number", {}}, situation.name};
    if (!worst.situation.empty() && !(asked > most)) continue;
    most = asked;
    worst = {Demand<Force>{most}, situation.name};
  }
  return worst;
}

}  // namespace

Finding carrier_finding(const CarrierRule& rule, const StageFacts& facts, std::size_t carrier, const std::string& name,
                        const std::optional<Force>& rated, Trace& trace) {
  const UnitSystem units = facts.plan.piece.units;
  const Asked asked = most_asked(rule, facts, carrier);
  Outcome<Resistance<Force>> plate =
      NotAssessed{fmt::format("the rating of {} '{}' is not in the plan", rule.kind, name),
                  rule.rating_key.empty() ? fmt::format("[[rigging.{}]] rated = \"...\"", rule.kind)
                                          : std::string(rule.rating_key)};
  if (rated) plate = Resistance<Force>{*rated};
  Finding finding = compared<Force>(rule.id, name, asked.demand, plate, 1.0, "its plate");
  finding.situation = asked.situation;
  if (finding.result == Result::fail) {
    finding.text = fmt::format("{} {} {} {}, its plate says {}",
                               firstpick::print(std::get<Demand<Force>>(asked.demand).value, units, Rounding::up),
                               rule.fails, rule.kind, name, firstpick::print(*rated, units, Rounding::down));
    finding.remedy = fmt::format("a stronger {}, or less load", rule.kind);
  }
  if (finding.utilization)
    trace.add([&] {
      return Step{.words = fmt::format("use of {} {}", rule.kind, name),
                  .result = {"u", *finding.utilization, "1"},
                  .formula = "V / V_rated",
                  .given = {{"V", in(kN, std::get<Demand<Force>>(asked.demand).value), "kN"},
                            {"V_rated", in(kN, *rated), "kN"}},
                  .clause = "its plate",
                  .sources = {}};
    });
  return finding;
}

}  // namespace firstpick::checks
