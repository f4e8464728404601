// The hand-made slab made a ring, a box or a slab on ribs.
#pragma once

#include <cstddef>

#include "support/hand_made_slab.hpp"

namespace firstpick::tests {

// OD 3.4, ID 3.0, 0.6 m high on four legs towards the axis.
inline void make_ring_on_four(SlabLift& lift) {
  plan::Solid& ring = lift.plan.piece.solids[0];
  ring.shape = plan::Shape::pipe;
  ring.diameter = 3.4 * m, ring.inside_diameter = 3.0 * m, ring.length = 0.6 * m;
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  const double at_m[4][2] = {{1.6, 0.0}, {0.0, 1.6}, {-1.6, 0.0}, {0.0, -1.6}};
  for (std::size_t i = 0; i < 4; ++i) lift.plan.inserts[i].at = {at_m[i][0] * m, at_m[i][1] * m, 0.6 * m};
  lift.plan.riggings[0].equalised.clear();
}

// 2.0 wide, 1.6 high, 2.0 long along y, all members alike.
inline void make_box_on_four(SlabLift& lift, Length wall = 0.2 * m) {
  plan::Solid& whole = lift.plan.piece.solids[0];
  whole.size = {2.0 * m, 2.0 * m, 1.6 * m};
  plan::Solid barrel = whole;
  barrel.name = "barrel", barrel.cut = true;
  barrel.at = {wall, 0.0 * m, wall};
  barrel.size = {2.0 * m - 2.0 * wall, 2.0 * m, 1.6 * m - 2.0 * wall};
  lift.plan.piece.solids.push_back(barrel);
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  const double at_m[4][2] = {{0.4, 0.5}, {1.6, 0.5}, {1.6, 1.5}, {0.4, 1.5}};
  for (std::size_t i = 0; i < 4; ++i) lift.plan.inserts[i].at = {at_m[i][0] * m, at_m[i][1] * m, 1.6 * m};
}

// 4 x 2 m, 0.15 m thick, two ribs 0.4 m wide and 0.15 m high along it, below its inserts.
inline void make_slab_on_ribs(SlabLift& lift) {
  lift.plan.piece.solids[0].at.z = 0.15 * m;
  lift.plan.piece.solids[0].size = {4.0 * m, 2.0 * m, 0.15 * m};
  for (const double y : {0.3, 1.3}) {
    plan::Solid rib = lift.plan.piece.solids[0];
    rib.name = y < 1.0 ? "rib 1" : "rib 2";
    rib.at = {0.0 * m, y * m, 0.0 * m};
    rib.size = {4.0 * m, 0.4 * m, 0.15 * m};
    lift.plan.piece.solids.push_back(rib);
  }
  lift.plan.piece.stated_weight.reset();
}

}  // namespace firstpick::tests
