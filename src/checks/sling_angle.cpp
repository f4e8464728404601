// No leg lies flatter than the rule set allows, nor flatter than its own tag allows.
//
//   angle_from_horizontal >= limit
//
// Source   "minimum_sling_angle" of the rule set; [[sling]] minimum_angle from the tag, the steeper governs.

#include <algorithm>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "checks/worst_leg.hpp"

namespace firstpick::checks {

std::vector<Finding> sling_angle(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "sling-angle";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  findings.reserve(facts.rigging->legs.size());
  const UnitSystem units = facts.plan.piece.units;
  const auto& rule_limit = facts.rules.minimum_sling_angle;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    const plan::Leg& l = facts.rigging->legs[leg];
    const auto sling = std::ranges::find(facts.plan.slings, l.gear, &plan::Sling::id);
    Angle limit = rule_limit.value;
    if (sling != facts.plan.slings.end() && sling->minimum_angle) limit = std::max(limit, *sling->minimum_angle);

    if (sling != facts.plan.slings.end() && sling->minimum_angle && !is_finite(*sling->minimum_angle)) {
      findings.push_back(missing(id, l.to, "the tag's least angle is not a usable number", "[[sling]] minimum_angle"));
      continue;
    }
    const auto angle = flattest(facts.gear_situations, leg);
    Outcome<Resistance<Angle>> has = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&angle)) has = *gap;
    else has = Resistance<Angle>{std::get<Angle>(angle)};
    trace.add([&] {
      return Step{.words = fmt::format("the flattest the leg to {} may lie", l.to),
                  .result = {"beta_min", in(deg, limit), "deg"},
                  .formula = {},
                  .given = {},
                  .clause = rule_limit.source.locator,
                  .sources = {rule_limit.source}};
    });
    Finding finding = compared<Angle>(id, l.to, Demand<Angle>{limit}, has, 1.0,
                                      citation(rule_limit.source));
    if (finding.result == Result::fail) {
      finding.text = fmt::format("the leg to {} lies at {} from horizontal, not flatter than {} is allowed", l.to,
                                 firstpick::print(std::get<Angle>(angle), units, Rounding::down),
                                 firstpick::print(limit, units, Rounding::up));
      finding.remedy = "longer legs, or a spreader beam";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
