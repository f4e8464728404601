// What the scale of each crane shows while a piece is turned, what it must not pass, and the piece at three angles.
//
//   L(t) = min(max over t of s(t) W_piece, F(t)) + rigging + block
//
// s(t)   share of the hook of all loads at angle t, without dynamic factor; W_piece as in crane_hook_load.cpp
// F(t)   the largest pull of this hook that overloads no leg, gear or insert when the piece stands at t: their
//        own rules, asked again with the forces of that angle scaled to the pull
// L(t) is told as few numbers as do not stop the turn itself: one for all angles where one does, else bands.
// Source: statics. A pull is what the scale shows: it already holds what a dynamic factor stands for.
// Told on the lift card beside the report, never judged.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/finding.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"
#include "units/vector.hpp"

namespace firstpick::checks {

struct PullBand {
  Angle from{}, to{};
  Force most{};
};

struct CranePull {
  std::string id;
  std::optional<Force> reading{};  // the most that its scale shows at rest; absent: not assessed
  std::vector<PullBand> limits{};  // in the order of the turn; empty: not assessed
};

// The piece at one angle of its turn, to be drawn.
struct TurnMoment {
  Angle angle{};
  Direction up, level;       // in piece axes; level: square to the axis of the turn, to the side that rises
  bool held = false;         // by the legs of the main hook
  Position hook, tail_hook;  // in piece axes, where they hold it
  std::optional<Force> reading{}, tail_reading{};  // of each crane's scale, at rest
};

struct PullsOnScale {
  std::vector<CranePull> cranes;  // as in the report of the stage
  std::vector<TurnMoment>
      moments;  // as it starts, on the way (where the legs take it off a table), as it ends
};

// The largest use of these findings, zero without one. Absent: one is missing, or its use is no number from
// zero on.
std::optional<double> largest_use(const std::vector<Finding>& findings);

// Of a turn stage of the plan; of others, and where the turn could not be computed, nothing.
PullsOnScale pulls_on_scale(const plan::Plan& plan, const piece::Body& body, std::size_t stage,
                            const tables::RuleSet& rules, const tables::Tables& tables);

}  // namespace firstpick::checks
