#include "demands/turning.hpp"

#include <cmath>

#include "demands/imbalance.hpp"

namespace firstpick::demands {

Angle balance_angle(const TurnedPiece& piece) {
  const Position out = load_centre({piece.legs, {}, piece.loads}).at - piece.frame.on_axis;
  const Length c = dot(piece.frame.rising, out), z = dot(piece.frame.flat_up, out);
  return std::atan2(in(m, c), in(m, z)) * radian;
}

Outcome<TurnPose> turn_pose(const TurnedPiece& piece, Angle angle) {
  Force total{};
  for (const loads::AppliedLoad& load : piece.loads) {
    if (!is_finite(load.force) || !(load.force >= Force{}) || !is_finite(load.at.x + load.at.y + load.at.z))
      return NotAssessed{"a load on the piece is not a finite force downwards at a known place",
                         "check density and attached weights"};
    total += load.force;
  }
  if (!(total > Force{}) || !is_finite(total))
    return NotAssessed{"the piece has no weight", "give its solids and the density of its concrete"};
  switch (piece.method) {
    case plan::TurnMethod::edge: return turn_about_edge(piece, angle);
    case plan::TurnMethod::table: return turn_off_table(piece, angle);
    case plan::TurnMethod::two_hooks: return turn_between_hooks(piece, angle);
  }
  return NotAssessed{"this way to turn a piece is not computed", {}};
}

}  // namespace firstpick::demands
