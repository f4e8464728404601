// Turning follows a written procedure.
//
// Source   BC Occupational Health and Safety Regulation 14.1 and 14.42.1: a lift in which the centre of gravity moves is a
//          critical lift and needs a written plan. A worker was killed where a tank was turned out of its form without one
//          (Massachusetts FACE 02MA016).
// Absent   HOLD. Passes in stages that turn nothing.

#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

std::vector<Finding> turn_procedure(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "turn-procedure";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind != plan::StageKind::turn) return {passed(id, mark)};
  if (!facts.stage.turn) return {missing(id, mark, how_is_missing, turn_to_write)};
  if (!is_stated(facts.stage.turn->procedure))
    return {missing(id, mark, "no written procedure for this turn is in the plan",
                    "[stage.turn] procedure = the number of the written turning procedure")};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
