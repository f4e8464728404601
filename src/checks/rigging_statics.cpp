// The piece hangs in equilibrium, stably, on legs that pull.
//
// Source   demands/hanging.cpp (equilibrium of a rigid piece on elastic legs; residuals and stability checked there).
// Missing  no convergence, not stable, no admissible sharing: HOLD with the reason.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> rigging_statics(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "rigging-statics";
  const std::string& subject = facts.stage.rigging;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging)) return {missing(id, subject, gap->why, gap->remedy)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations))
    return {missing(id, subject, gap->why, gap->remedy)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations))
    return {missing(id, subject, gap->why, gap->remedy)};

  const auto& hanging = std::get<demands::Hanging>(facts.hanging);
  trace.add([&] {
    return Step{.words = "tilt of the piece as it hangs; largest unbalanced force over the load",
                .result = {"tilt", in(deg, hanging.tilt), "deg"},
                .formula = {},
                .given = {{"residual", hanging.force_residual, "1"}},
                .clause = "statics",
                .sources = {facts.rules.sharing.source, facts.rules.leg_stiffness_ratio.source}};
  });
  return {passed(id, subject)};
}

}  // namespace firstpick::checks
