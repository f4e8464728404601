// What takes hold of an insert carries no more than is marked on it, and keeps the factor of the regulation.
//
//   T <= T_rated * min(1, n_d / n)     n_d: breaking load over rated load of the hardware; n: factor the
//   regulation demands
//
// Source   29 CFR 1926.704(d): lifting hardware carries five times the maximum intended load; never above its
//          mark.
// Absent   no hardware named, no rated load, no n_d: HOLD.

#include <algorithm>

#include <fmt/format.h>

#include "checks/hardware_of.hpp"
#include "checks/rule.hpp"
#include "checks/sling_of.hpp"
#include "checks/worst_leg.hpp"
#include "plan/words.hpp"

namespace firstpick::checks {

namespace {

// Breaking load; a mark or a factor that is missing or unusable is not assessed.
Outcome<Resistance<Force>> breaking_load(const plan::Hardware& hardware) {
  if (!hardware.rated)
    return NotAssessed{fmt::format("the rated load marked on hardware '{}' is not in the plan", hardware.id),
                       "[[hardware]] rated = \"...\""};
  if (!hardware.design_factor)
    return NotAssessed{fmt::format("the design factor of hardware '{}' is not in the plan", hardware.id),
                       "[[hardware]] design_factor = 5, as the mark or the certificate says"};
  return Resistance<Force>{*hardware.rated * *hardware.design_factor};
}

}  // namespace

std::vector<Finding> hardware_overload(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "hardware-overload";
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  const auto& required = facts.rules.hardware_factor;
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t leg = 0; leg < facts.rigging->legs.size(); ++leg) {
    const std::string& to = facts.rigging->legs[leg].to;
    const auto named = hardware_of(facts, leg);
    if (const auto* gap = std::get_if<NotAssessed>(&named)) {
      findings.push_back(missing(id, to, gap->why, gap->remedy));
      continue;
    }
    const plan::Hardware& hardware = *std::get<const plan::Hardware*>(named);
    const auto worst = most_tension(facts.gear_situations, leg);
    const auto breaking = breaking_load(hardware);
    const double n = required.value.value();
    const double factor = hardware.design_factor && n >= 1.0 ? std::max(*hardware.design_factor, n) : n;
    Finding finding = compared<Force>(id, to, demand_of(worst), breaking, factor, citation(required.source));
    if (const auto* w = std::get_if<WorstLeg>(&worst)) finding.situation = w->situation;
    if (finding.utilization)
      trace.add([&] {
        return Step{
            .words = fmt::format("use of {} {} at {}", plan::word_for(hardware.kind), hardware.id, to),
            .result = {"u_h", *finding.utilization, "1"},
            .formula = "T / (T_rated * min(1, n_d / n))",
            .given = {{"T", in(kN, std::get<WorstLeg>(worst).tension), "kN"},
                      {"T_rated", in(kN, *hardware.rated), "kN"},
                      {"n_d", *hardware.design_factor, "1"},
                      {"n", n, "1"}},
            .clause = required.source.locator,
            .sources = {required.source}};
      });
    if (finding.result == Result::fail) {
      finding.text =
          fmt::format("{} '{}' at {} carries {}, {} is allowed", plan::word_for(hardware.kind), hardware.id,
                      to, firstpick::print(std::get<WorstLeg>(worst).tension, units, Rounding::up),
                      firstpick::print(Force{std::get<Resistance<Force>>(breaking).value / factor}, units,
                                       Rounding::down));
      finding.remedy =
          "an insert and hardware of a larger size, both; or steeper legs, or gear that shares the load";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
