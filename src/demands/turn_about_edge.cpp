// One crane turns the piece about an edge that stays on the ground.
//
//   F = W x / x_hook      x = c cos t - z sin t,   x_hook = p cos t - q sin t        N = W - F
//
// W      the loads; c, z: their centre from the edge, along the face and square to it as cast
// F      pull of the hook, plumb; p, q: the hook from the edge in the same way, where it stands at that angle
// N      reaction of the edge, at s = (W s_W - F s_hook) / N along it
// Held   hook and load centre on one side of the edge, the hook farther out. A piece that passes its balance (x < 0) falls
//        over its edge by itself until something stops it: slack, F = 0 and N = W. One that starts past it is let down by
//        the hook.
// Source statics; derived. At t = 0 with c = p/2: F = W/2.
// Not assessed: the hook not farther out than the load centre (the piece leaves its edge); s beyond the edge.

#include <algorithm>

#include "demands/imbalance.hpp"
#include "demands/pulled_legs.hpp"
#include "demands/turning.hpp"

namespace firstpick::demands {

namespace {

constexpr double rounding = 1e-9;  // of the load, of the size

}  // namespace

Outcome<TurnPose> turn_about_edge(const TurnedPiece& piece, Angle angle) {
  const TurningFrame& frame = piece.frame;
  TurnPose pose{.angle = angle, .up = up_at(frame, angle)};
  const Direction level = level_at(frame, angle);
  const auto over = hook_over_legs(piece.legs, piece.equalised, pose.up);
  if (const auto* gap = std::get_if<NotAssessed>(&over)) return *gap;
  const auto& hook = std::get<HookOverLegs>(over);
  pose.hook = hook.at;

  const LoadCentre centre = load_centre({piece.legs, {}, piece.loads});
  const Position out = centre.at - frame.on_axis, hook_out = hook.at - frame.on_axis;
  const Length x = dot(level, out), x_hook = dot(level, hook_out);
  const Length s_load = dot(frame.along, out), s_hook = dot(frame.along, hook_out);

  const bool in_balance = abs(x) <= rounding * centre.size;
  const bool held = (x > Length{} || piece.let_down) && (x > Length{}) == (x_hook > Length{}) && abs(x_hook) >= (1.0 - rounding) * abs(x);
  if (!in_balance && held)
    pose.main_pull = std::min(1.0, (x / x_hook).value()) * centre.total;
  else if (x > Length{} && !in_balance)
    return NotAssessed{"the hook does not stand farther from the edge than the centre of gravity: the piece leaves the "
                       "ground instead of turning",
                       "picks beyond the centre of gravity, seen from the edge"};
  else
    pose.slack = true;
  pose.edge.upward = centre.total - pose.main_pull;
  if (pose.edge.upward > rounding * centre.total) {
    const Length s = (centre.total / pose.edge.upward).value() * s_load -
                     (pose.main_pull / pose.edge.upward).value() * s_hook;
    if (!(s >= -rounding * centre.size) || !(s <= frame.reach + rounding * centre.size))
      return NotAssessed{"the piece would roll off the end of its edge: hook and centre of gravity are not in line",
                         "legs that bring the hook over the middle of the edge, or a longer edge"};
    pose.edge.at = frame.on_axis + frame.along * s;
  } else {
    pose.edge.at = frame.on_axis + frame.along * s_load;
    if (!(abs(s_load - s_hook) <= 1e-6 * centre.size))
      return NotAssessed{"the piece lifts off its edge and swings sideways", "the hook over the centre of gravity"};
  }
  pose.sharings = pulled_legs(piece.legs, hook, pose.main_pull, pose.up);
  return pose;
}

}  // namespace firstpick::demands
