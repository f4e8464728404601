// A lift that is critical whatever the crane's rating has a written plan.
//
// Source   BC OHSR 14.1: the centre of gravity of the load, or the length of a sling leg, changes during the
//          lift; USACE EM 385-1-1: more than one crane. Of what a plan can say, the stage turn is such a lift. Legs over a sheave settle as the load
//          is taken up, and are not counted in a straight lift. Shares of the crane's rating: rule
//          crane-thresholds.
// Absent   critical_lift_plan: HOLD.

#include "checks/crane_hook_load.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

std::vector<Finding> critical_lift(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "critical-lift";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind == plan::StageKind::turn && !is_stated(facts.stage.critical_lift_plan))
    return {missing(id, mark, "turning the piece is a critical lift, and no written plan of it is named",
                    "[[stage]] critical_lift_plan = \"...\": its number")};
  if (cranes_of(facts).size() > 1 && !is_stated(facts.stage.critical_lift_plan))
    return {missing(id, mark, "two cranes or hoists lift together, and no written plan of it is named",
                    "[[stage]] critical_lift_plan = \"...\": its number")};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
