// The beam of the tests of strands and bars: the slab of hand_made_slab.hpp made long and narrow, with what
// lies in it.
#pragma once

#include <string>

#include "checks/piece_model.hpp"
#include "piece/section.hpp"
#include "support/hand_made_slab.hpp"

namespace firstpick::tests {

// 12 m x 0.4 x 0.6 m on two picks 2.4852 m from its ends, legs long enough to hang nearly upright; nothing
// grips.
inline void make_picked_beam(SlabLift& lift, double c_m = 2.4852) {
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

inline plan::Strand strands_at(Force force, Length height) {
  plan::Strand made;
  made.name = "bottom row";
  made.force = force;
  made.line = {{0.0 * m, 0.2 * m, height}, {12.0 * m, 0.2 * m, height}};
  made.transfer_length = 0.6 * m;
  return made;
}

inline plan::Bar bars_at(const std::string& name, Area area, Length height) {
  plan::Bar made;
  made.name = name;
  made.area = area;
  made.yield_strength = 420.0 * MPa;
  made.line = {{0.1 * m, 0.2 * m, height}, {11.9 * m, 0.2 * m, height}};
  made.spacing = 100.0 * mm;
  return made;
}

inline void with_strands(SlabLift& lift, Force force, Length height) {
  make_picked_beam(lift);
  lift.plan.piece.strands = {strands_at(force, height)};
  lift.plan.concrete.release_strength = 20.0 * MPa;
}

// Bars below and, weaker, above; picked at its ends.
inline void with_bars(SlabLift& lift, Area below) {
  make_picked_beam(lift, 0.3);
  lift.plan.piece.may_crack = true;
  lift.plan.piece.bars = {bars_at("bottom bars", below, 60.0 * mm),
                          bars_at("top bars", 400.0 * mm2, 540.0 * mm)};
}

// Its section, 0.4 x 0.6 m, and all of it as one stretch.
inline piece::Section section_of_beam(double at_m) {
  piece::Section section;
  section.at = at_m * m;
  section.area = 0.24 * m2;
  section.centroid = {at_m * m, 0.2 * m, 0.3 * m};
  section.about_across = SecondMoment::from_value(0.0072);
  section.lowest = 0.0 * m, section.highest = 0.6 * m;
  section.nearest = 0.0 * m, section.farthest = 0.4 * m;
  section.parts = 1;
  section.shear_area = 0.16 * m2;
  return section;
}
inline piece::Stretch whole_beam() {
  return {section_of_beam(0.0), section_of_beam(6.0), section_of_beam(12.0), 0.0 * m, 12.0 * m, true};
}

inline checks::ModelChoice model_of_beam(const checks::StageFacts& facts) {
  return checks::piece_model(facts.plan, facts.body, facts.rules.cracking);
}

}  // namespace firstpick::tests
