// A piece on a vehicle is tied before the legs come off, and its ties are not checked here: a caution on every haul.
//
// Source   a panel went off an A-frame with a crane that still held one leg (WorkSafe Victoria); another was pulled off
//          when the straps of all panels were loosened at once (Michigan FACE 09MI075).

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> haul_restraint(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "haul-restraint";
  const std::string& mark = facts.plan.piece.mark;
  if (facts.stage.kind != plan::StageKind::haul) return {passed(id, mark)};
  return {noted(id, mark,
                "only the lift is checked, not the ride: tie the piece before the legs come off, load both sides alike, "
                "loosen one piece at a time")};
}

}  // namespace firstpick::checks
