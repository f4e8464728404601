// A turn stage as it is computed: the piece with all its angles, and the angles at which something is worst.
#pragma once

#include <memory>
#include <vector>

#include "demands/turning.hpp"
#include "loads/load_sets.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::checks {

// What every rule says of a turn stage without [stage.turn].
inline constexpr const char* how_is_missing = "how the piece is turned is not in the plan";
inline constexpr const char* turn_to_write = "[stage.turn] with method, about, from, to and procedure";

struct AtAngle {
  double share = 0.0;      // of the load
  Angle angle{};
};

struct TurnSweep {
  demands::TurnedPiece piece;             // with the loads of the first load set of the legs
  std::vector<demands::TurnPose> poses;   // at every angle of the situations, rising: for checks of the piece itself
  Angle low{}, high{};                    // where legs carry it: from the table angle with a table
  AtAngle main, tail;                     // largest pull of each hook
  Ratio slip{};                           // largest level push over the edge's reaction, hook off plumb
  Angle slip_at{};
  Angle balance{};                        // past it the piece turns by itself (edge)
  Angle falls_free{};                     // how far it does
  Angle sideways{};                       // largest lean out of the plane of two hooks
};

// The rigging whose legs carry the piece in this stage: that of the stage, with the legs of the tail behind its own
// where there are two hooks. Null where there is none.
std::shared_ptr<const plan::Rigging> rigging_of_turn(const plan::Plan& plan, const plan::Stage& stage);

// The piece under one load set. Not assessed: what the method needs is not in the plan; a start that is not how the
// piece stands before; an edge that cannot be turned about.
Outcome<demands::TurnedPiece> turned_piece(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                                           const loads::LoadSet& set);

// The angles between which the legs carry it. Not assessed: a table without its angle, or one outside the turn.
struct TurnRange {
  Angle low{}, high{};
};
Outcome<TurnRange> range_of(const plan::Stage& stage);

// The end of the range at which the legs take the piece up.
Angle start_of(const plan::Stage& stage, const TurnRange& range);

// Every sample and every worst angle of legs, hooks, edge and inserts (tension, shear, both).
// Not assessed: an angle at which the piece cannot be held, with the angle.
Outcome<TurnSweep> turn_sweep(const demands::TurnedPiece& piece, const TurnRange& range, const plan::Plan& plan,
                              const piece::Body& body, const tables::RuleSet& rules);

// A pose, or why there is none with the angle in front.
Outcome<demands::TurnPose> pose_at(const demands::TurnedPiece& piece, Angle angle);

// Rising, without those that differ by less than a thousandth of a degree.
std::vector<Angle> in_order(std::vector<Angle> angles);

}  // namespace firstpick::checks
