// A piece that hangs does not roll over under one hand on a tag line.
//
//   phi <= limit        phi: roll under the side pull, demands/side_pull.hpp
//
// Side pull and limit are "side_pull" and "maximum_roll" of the rule set, choices. The weight is the least that density
// and stated weight allow: a lighter piece rolls farther.
// Source   statics. The lid of WorkSafe WA Safety Alert 10/2012 rolls 13.6 degrees.
// Missing  statics not assessed. Passes while the piece turns on an edge or between two hooks, which hold it.

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "checks/load_centre_of.hpp"
#include "checks/picks_of.hpp"
#include "checks/rule.hpp"
#include "demands/side_pull.hpp"

namespace firstpick::checks {

namespace {

Outcome<Force> least_weight(const StageFacts& facts) { return loads::least_weight(facts.plan, facts.body); }

Outcome<demands::Roll> roll_of(const StageFacts& facts) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging)) return *gap;
  const auto weight = least_weight(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&weight)) return *gap;
  const auto centres = load_centres_of(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&centres)) return *gap;
  std::optional<demands::Roll> worst;
  for (std::size_t i = 0; i < std::get<std::vector<Position>>(centres).size(); ++i) {
    const bool without = i > 0 && i <= facts.without_parts.size();
    const demands::Hanging& hanging = without ? facts.without_parts[i - 1] : std::get<demands::Hanging>(facts.hanging);
    const auto roll = demands::worst_roll(picks_of(facts), std::get<std::vector<Position>>(centres)[i],
                                          std::get<Force>(weight), facts.rules.side_pull.value, facts.body, hanging.up);
    if (const auto* gap = std::get_if<NotAssessed>(&roll)) return *gap;
    if (!worst || std::get<demands::Roll>(roll).angle > worst->angle) worst = std::get<demands::Roll>(roll);
  }
  return *worst;
}

void record(const demands::Roll& roll, Force weight, const tables::RuleSet& rules, Trace& trace) {
  trace.add([&] {
    Step step{.words = "roll of the hanging piece under a side pull at its rim",
              .result = {"theta_roll", in(deg, roll.angle), "deg"},
              .clause = "statics",
              .sources = {rules.side_pull.source, rules.maximum_roll.source}};
    if (roll.angle == Angle{} || !(roll.angle < 90.0 * deg)) return step;
    step.result = {"M_side", roll.pull.value() / 1000.0, "kN m"};
    step.words += ": the moment that it balances when it has rolled by theta_roll";
    step.formula = "W_least * (d * cos(theta_roll) + z * sin(theta_roll))";
    step.given = {{"W_least", in(kN, weight), "kN"},
                  {"d", in(m, roll.inside), "m"},
                  {"z", in(m, roll.depth), "m"},
                  {"theta_roll", roll.angle.value(), "rad"}};
    return step;
  });
}

}  // namespace

std::vector<Finding> roll_stability(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "roll-stability";
  const std::string& subject = facts.stage.rigging;
  if (facts.turning && is_assessed(*facts.turning) && facts.stage.turn->method != plan::TurnMethod::table)
    return {passed(id, subject)};
  const auto roll = roll_of(facts);
  Outcome<Demand<Angle>> asked = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&roll)) asked = *gap;
  else asked = Demand<Angle>{std::get<demands::Roll>(roll).angle};
  if (const auto* r = std::get_if<demands::Roll>(&roll)) record(*r, std::get<Force>(least_weight(facts)), facts.rules, trace);

  const auto& limit = facts.rules.maximum_roll;
  Finding finding = compared<Angle>(id, subject, asked, Resistance<Angle>{limit.value}, 1.0, "rule set " + facts.rules.id);
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    const Angle angle = std::get<demands::Roll>(roll).angle;
    const std::string pull = print(facts.rules.side_pull.value, units);
    finding.text = angle < 180.0 * deg
                       ? fmt::format("a side pull of {} at the rim rolls the piece by {}, {} is the most", pull,
                                     print(angle, units, Rounding::up), print(limit.value, units, Rounding::down))
                       : fmt::format("a side pull of {} at the rim rolls the piece right over", pull);
    finding.remedy = "three picks or more, well apart, around the centre of gravity";
  }
  return {finding};
}

}  // namespace firstpick::checks
