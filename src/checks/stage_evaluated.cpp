// A stage whose demands are not computed is HOLD, never a pass by silence.
//
// Evaluated   strip, yard, store, haul, set: as a lift by crane, and as set down; what a ride or a store does to the piece
//             besides is on the list of what is not checked. turn: with [stage.turn], at every angle.
// Not         a turn whose [stage.turn] is absent.

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> stage_evaluated(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "stage-evaluated";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind == plan::StageKind::turn && !facts.stage.turn)
    return {missing(id, mark, how_is_missing, turn_to_write)};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
