// Somebody who may answer for the lift is named: the engineer of record.
//
// Source   plan practice; Cal. Title 8 s.1714(a) and the duties quoted in docs/rules/engineer-named.md.
// Absent   HOLD.

#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

std::vector<Finding> engineer_named(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "engineer-named";
  if (!is_stated(facts.plan.piece.engineer))
    return {missing(id, facts.plan.piece.mark, "no engineer of record is named", "[piece] engineer = \"...\"")};
  return {passed(id, facts.plan.piece.mark)};
}

}  // namespace firstpick::checks
