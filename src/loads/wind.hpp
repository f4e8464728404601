// Wind on a piece that hangs.
//
//   q = rho_air v^2 / 2            F_w = c_w q A_w            tan(phi) = F_w / W_least
//   k_w = (3 - 2 cos(phi)) / cos(phi)
//
// Seen along the hook line the piece in the wind is the piece in still air, heavier by 1 / cos(phi) and leaning by phi: the
// resultant of weight and wind passes through the hook. A gust that comes at once takes it from plumb to 2 phi; as it
// passes phi its speed adds (2 - 2 cos(phi)) to the pull (energy of a pendulum). The resultant acts at the height of the
// middle of the side area, plumb above or below the centre of gravity.
// Source   statics and energy of a pendulum on one hook. Density of the air and coefficient: tables/wind.toml.
// A_w      piece/side_area.hpp, in the worst level direction. Form parts that come along, beams and slings are not in it.
// W_least  the least that density and stated weight allow: a lighter piece swings farther.
#pragma once

#include "loads/load_sets.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::loads {

struct WindLoad {
  Force force{};
  Angle lean{};       // phi, in a steady wind
  Angle swing{};      // 2 phi, as a gust takes it
  Ratio factor{};     // k_w
  Length above{};     // the middle of the side area over the centre of gravity
};

// Not assessed: no table, a speed or coefficient that is no usable number, no side area, no least weight.
Outcome<WindLoad> wind_load(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                            const Direction& up, const tables::Tables& tables, Trace& trace);

// The set as the wind makes it: "hanging in wind".
LoadSet in_wind(const LoadSet& set, const WindLoad& wind, const Direction& up);

}  // namespace firstpick::loads
