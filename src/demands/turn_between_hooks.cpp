// Two plumb hooks, main and tail, share the piece at every angle.
//
//   F_main = W (x - x_tail) / (x_main - x_tail)        F_tail = W - F_main
//
// x      level distances in the plane of the turn: load centre, and the hooks where they stand over their legs
// Lean   out of that plane: atan(e / h), e the load centre's distance from the line between the hooks, h how deep it
//        lies below the point of that line that is beside it; the forces leave it out, hanging-tilt limits it
// Source statics: a piece on two picks.
// Not assessed: hooks that stand over each other; a hook that would have to push (the piece swings on the other one).

#include <cmath>

#include "demands/imbalance.hpp"
#include "demands/pulled_legs.hpp"
#include "demands/turning.hpp"

namespace firstpick::demands {

namespace {

constexpr double slack_within = 1e-9;  // of the load, of the size

// Each sharing of the main legs with each of the tail legs.
std::vector<Sharing> together(const std::vector<Sharing>& main, const std::vector<Sharing>& tail) {
  std::vector<Sharing> all;
  for (const Sharing& a : main)
    for (const Sharing& b : tail) {
      Sharing both = a;
      both.name += (both.name.empty() || b.name.empty() ? "" : ", ") + b.name;
      both.legs.insert(both.legs.end(), b.legs.begin(), b.legs.end());
      all.push_back(std::move(both));
    }
  return all;
}

}  // namespace

Outcome<TurnPose> turn_between_hooks(const TurnedPiece& piece, Angle angle) {
  const TurningFrame& frame = piece.frame;
  TurnPose pose{.angle = angle, .up = up_at(frame, angle)};
  const auto over_main = hook_over_legs(piece.legs, piece.equalised, pose.up);
  if (const auto* gap = std::get_if<NotAssessed>(&over_main)) return *gap;
  const auto over_tail = hook_over_legs(piece.tail_legs, piece.tail_equalised, pose.up);
  if (const auto* gap = std::get_if<NotAssessed>(&over_tail)) return *gap;
  const auto& main = std::get<HookOverLegs>(over_main);
  const auto& tail = std::get<HookOverLegs>(over_tail);
  pose.hook = main.at;
  pose.tail_hook = tail.at;

  const LoadCentre centre = load_centre({piece.legs, {}, piece.loads});
  const Direction level = level_at(frame, angle);
  const Length x = dot(level, centre.at - tail.at), span = dot(level, main.at - tail.at);
  if (!(span > 1e-6 * centre.size))
    return NotAssessed{"the two hooks stand over each other, or have changed sides: their shares are not known",
                       "end the turn before, or picks farther apart"};
  double share = (x / span).value();
  if (!(share >= -slack_within) || !(share <= 1.0 + slack_within))
    return NotAssessed{share > 1.0 ? "the tail hook goes slack: the piece swings on the main hook"
                                   : "the main hook goes slack: the piece swings on the tail hook",
                       "end the turn before, or picks on both sides of the centre of gravity"};
  share = std::fmin(1.0, std::fmax(0.0, share));
  pose.main_pull = share * centre.total;
  pose.tail_pull = centre.total - pose.main_pull;

  const Position beside = tail.at + share * (main.at - tail.at);
  const Length aside = abs(dot(frame.along, centre.at - beside)), depth = dot(pose.up, beside - centre.at);
  if (!(depth > Length{}))
    return NotAssessed{"the centre of gravity lies above the hooks: the piece would roll", "longer legs"};
  if (aside > slack_within * centre.size) pose.sideways = std::atan2(in(m, aside), in(m, depth)) * radian;
  pose.sharings = together(pulled_legs(piece.legs, main, pose.main_pull, pose.up),
                           pulled_legs(piece.tail_legs, tail, pose.tail_pull, pose.up));
  return pose;
}

}  // namespace firstpick::demands
