// Rings and boxes told from the solid: from its volume, its moments of inertia and the box around it.
//
//   ring   V = pi (Ro^2 - Ri^2) H,  Izz = V (Ro^2 + Ri^2)/2
//   box    V = (W D - b h) L, a barrel b x h right through along x or y;  int x^2 dV = L (W^3 D - b^3 h)/12
//
// Each formula gives one measure; what is left over (the other moments, the box around, the centroid) must agree to 0.5 %.
#pragma once

#include <optional>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::checks {

struct RingShape {
  Position middle;                         // of the ring
  Length outside{}, inside{}, depth{};     // radii, height
};
std::optional<RingShape> ring_shape(const piece::Body& body);

struct BoxShape {
  plan::Axis barrel = plan::Axis::y;       // x or y
  Length length{}, width{}, depth{};       // outside: along the barrel, across it, upright
  Length top{}, bottom{}, side{};          // thicknesses
  Position middle;                         // of the box around it
};
std::optional<BoxShape> box_shape(const piece::Body& body);

// Thin enough for the model, by "cracking.line_slenderness": radius over so many walls; each span of the box, between the
// middles of its members, over so many thicknesses.
bool is_slender(const RingShape& ring, const tables::CrackingModel& limits);
bool is_slender(const BoxShape& box, const tables::CrackingModel& limits);

// What to write where the model does not hold.
inline constexpr const char* name_own_check = "[piece] bending_check: name the engineer's own check of its bending";

}  // namespace firstpick::checks
