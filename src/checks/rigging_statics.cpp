// The piece hangs in equilibrium, stably, on legs that pull.
//
// Source   demands/hanging.cpp (equilibrium of a rigid piece on elastic legs; residuals and stability checked there).
// Turn     demands/turning.hpp at every angle instead.
// Missing  no convergence, not stable, no admissible sharing: HOLD with the reason.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "demands/imbalance.hpp"

namespace firstpick::checks {

namespace {

// The hook's pull at its largest, computed again from level distances as the piece lies.
void record_turn(const TurnSweep& sweep, Trace& trace) {
  const demands::TurnedPiece& piece = sweep.piece;
  const auto pose = std::ranges::find_if(sweep.poses, [&](const auto& p) { return p.angle == sweep.main.angle; });
  if (pose == sweep.poses.end() || piece.method != plan::TurnMethod::edge || pose->slack) return;
  const demands::LoadCentre centre = demands::load_centre({piece.legs, {}, piece.loads});
  const Position load = centre.at - piece.frame.on_axis, hook = pose->hook - piece.frame.on_axis;
  const auto along = [&](const Position& p) { return in(m, Length{dot(piece.frame.rising, p)}); };
  const auto above = [&](const Position& p) { return in(m, Length{dot(piece.frame.flat_up, p)}); };
  trace.add([&] {
    return Step{.words = fmt::format("largest pull of the hook on the piece, turned to {}",
                                     print(pose->angle, UnitSystem::si)),
                .result = {"F_hook", in(kN, pose->main_pull), "kN"},
                .formula = "F_turn * (c_W * cos(theta) - z_W * sin(theta)) / (c_H * cos(theta) - z_H * sin(theta))",
                .given = {{"F_turn", in(kN, centre.total), "kN"},
                          {"c_W", along(load), "m"},
                          {"z_W", above(load), "m"},
                          {"c_H", along(hook), "m"},
                          {"z_H", above(hook), "m"},
                          {"theta", pose->angle.value(), "rad"}},
                .clause = "statics"};
  });
}

}  // namespace

std::vector<Finding> rigging_statics(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "rigging-statics";
  const std::string& subject = facts.stage.rigging;
  if (facts.turning && !is_assessed(*facts.turning)) {
    const auto& gap = std::get<NotAssessed>(*facts.turning);
    return {missing(id, subject, gap.why, gap.remedy)};
  }
  if (!facts.turning)
    if (const auto* gap = std::get_if<NotAssessed>(&facts.hanging))
      return {missing(id, subject, gap->why, gap->remedy)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations))
    return {missing(id, subject, gap->why, gap->remedy)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations))
    return {missing(id, subject, gap->why, gap->remedy)};

  if (facts.turning) {
    record_turn(std::get<TurnSweep>(*facts.turning), trace);
    return {passed(id, subject)};
  }
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
