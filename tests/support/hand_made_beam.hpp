// The hand-made slab made a beam, with strands or with bars.
#pragma once

#include <string>

#include "support/hand_made_slab.hpp"

namespace firstpick::tests {

// 12 m x 0.4 x 0.6 m on two picks 2.4852 m from its ends, legs long enough to hang nearly upright; nothing
// grips.
inline void make_long_beam(SlabLift& lift, double c_m = 2.4852) {
  lift.plan.piece.solids[0].size = {12.0 * m, 0.4 * m, 0.6 * m};
  lift.plan.piece.stated_weight = 67.8 * kN;
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  lift.plan.inserts = {headed_insert_at("A1", c_m * m, 0.2 * m),
                       headed_insert_at("A2", (12.0 - c_m) * m, 0.2 * m)};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.6 * m;
  lift.plan.riggings[0].legs = {leg_to("A1"), leg_to("A2")};
  lift.plan.riggings[0].equalised.clear();
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 1000.0 * m;
}

inline plan::Strand strand(Force force, Length height) {
  plan::Strand made;
  made.name = "bottom row";
  made.force = force;
  made.line = {{0.0 * m, 0.2 * m, height}, {12.0 * m, 0.2 * m, height}};
  made.transfer_length = 0.6 * m;
  return made;
}

inline plan::Bar bar(const std::string& name, Area area, Length height) {
  plan::Bar made;
  made.name = name;
  made.area = area;
  made.yield_strength = 420.0 * MPa;
  made.line = {{0.1 * m, 0.2 * m, height}, {11.9 * m, 0.2 * m, height}};
  made.spacing = 100.0 * mm;
  return made;
}

inline void make_stranded_beam(SlabLift& lift, Force force, Length height) {
  make_long_beam(lift);
  lift.plan.piece.strands = {strand(force, height)};
  lift.plan.concrete.release_strength = 20.0 * MPa;
}

// Bars below and, weaker, above; picked at its ends.
inline void make_beam_with_bars(SlabLift& lift, Area below) {
  make_long_beam(lift, 0.3);
  lift.plan.piece.may_crack = true;
  lift.plan.piece.bars = {bar("bottom bars", below, 60.0 * mm), bar("top bars", 400.0 * mm2, 540.0 * mm)};
}

}  // namespace firstpick::tests
