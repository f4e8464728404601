// A tilting table brings the piece up; the crane takes it off at an angle. From there the legs carry all of it.
//
//   F = W         whatever the angle at which it comes free: the ledge of the table may carry a part, none is credited
//
// Source statics. How it hangs once it is free: hang().

#include "demands/imbalance.hpp"
#include "demands/pulled_legs.hpp"
#include "demands/turning.hpp"

namespace firstpick::demands {

Outcome<TurnPose> turn_off_table(const TurnedPiece& piece, Angle angle) {
  TurnPose pose{.angle = angle, .up = up_at(piece.frame, angle)};
  const auto over = hook_over_legs(piece.legs, piece.equalised, pose.up);
  if (const auto* gap = std::get_if<NotAssessed>(&over)) return *gap;
  const auto& hook = std::get<HookOverLegs>(over);
  pose.hook = hook.at;
  pose.main_pull = load_centre({piece.legs, {}, piece.loads}).total;
  pose.sharings = pulled_legs(piece.legs, hook, pose.main_pull, pose.up);
  return pose;
}

}  // namespace firstpick::demands
