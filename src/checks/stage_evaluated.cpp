// A kind of stage whose demands this version does not compute is HOLD, never a pass by silence.
//
// Evaluated   strip, yard (store, haul and set lift the same way and are evaluated as a lift by crane; what else they
//             do to the piece is on the list of what is not checked).
// Not         turn: the piece rotates about an edge or between two hooks.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> stage_evaluated(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "stage-evaluated";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind == plan::StageKind::turn)
    return {missing(id, mark, "turning the piece is not evaluated by this version",
                    "have the engineer of record check this stage; lift plans without it may still be checked")};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
