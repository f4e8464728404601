// A measured strength stands behind the lift.
//
// Source   strength/usable_strength.cpp: what makes evidence usable. Absent or unusable: HOLD.

#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> strength_evidence(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "strength-evidence";
  const std::string& mark = facts.plan.piece.mark;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.usable_strength))
    return {missing(id, mark, gap->why, gap->remedy)};
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
