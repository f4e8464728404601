// A gust does not take the piece farther off plumb than the rule set allows, nor is it stronger than its caution speed.
//
//   2 phi <= maximum_swing: else NO-GO        v_w <= wind_caution: else HOLD
//
// phi, and what the wind adds to legs and inserts: loads/wind.hpp.
// Source   statics and energy of a pendulum; both limits are choices of the rule set.
// Absent   no wind_speed: the lift is judged in still air, which a caution on every output says.
// Missing  a turn, more than one hook, a side area that cannot be measured.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> wind_side_load(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "wind-side-load";
  const std::string& subject = facts.plan.piece.mark;
  if (!facts.stage.wind_speed) return {passed(id, subject)};
  if (!facts.wind)  // the load of the stage is not known
    return {missing(id, subject, "the load of the stage is not known, nor what the wind adds to it",
                    "what the other findings of this stage ask for")};
  if (const auto* gap = std::get_if<NotAssessed>(&*facts.wind)) return {missing(id, subject, gap->why, gap->remedy)};

  const auto& wind = std::get<loads::WindLoad>(*facts.wind);
  const UnitSystem units = facts.plan.piece.units;
  const auto& limit = facts.rules.maximum_swing;
  trace.add([&] {
    return Step{.words = "swing of the piece as the gust takes it from plumb",
                .result = {"theta_swing", in(deg, wind.swing), "deg"},
                .formula = "2 * theta_wind",
                .given = {{"theta_wind", in(deg, wind.lean), "deg"}},
                .clause = "energy of a pendulum",
                .sources = {limit.source, facts.rules.wind_caution.source}};
  });
  Finding finding = compared<Angle>(id, subject, Demand<Angle>{wind.swing}, Resistance<Angle>{limit.value}, 1.0,
                                    "rule set " + facts.rules.id);
  if (finding.result == Result::fail) {
    finding.text = fmt::format("a gust of {} takes the piece {} off plumb, {} is the most",
                               print(*facts.stage.wind_speed, units), print(wind.swing, units, Rounding::up),
                               print(limit.value, units, Rounding::down));
    finding.remedy = "less wind, or a place in the lee";
    return {finding};
  }
  const Comparison calm = compare<Speed>(Demand<Speed>{*facts.stage.wind_speed},
                                         Resistance<Speed>{facts.rules.wind_caution.value});
  if (finding.result == Result::pass && calm.result != Result::pass) {
    finding.result = Result::missing;
    finding.text = fmt::format("the gust of {} is above the caution speed of {}",
                               print(*facts.stage.wind_speed, units, Rounding::up),
                               print(facts.rules.wind_caution.value, units, Rounding::down));
    finding.remedy = "wait for less wind, or let the engineer of record set wind_caution in the plant's own rule set";
  }
  return {finding};
}

}  // namespace firstpick::checks
