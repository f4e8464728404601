// The bolt of a through-bolt with a plate on the far face does not break.
//
//   F <= A_se f_uta / n      F: the whole pull, along the bolt (checks/plate_pull.hpp)
//
// Source   ACI 318-19 17.6.1.2 (docs/rules/plate-steel.md).
// Absent   shank, steel, or whether a thread lies in the stressed length: HOLD. A pull across the bolt: HOLD.

#include "checks/plate_pull.hpp"
#include "checks/rule.hpp"
#include "resistances/through_bolt.hpp"

namespace firstpick::checks {

std::vector<Finding> plate_steel(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "plate-steel";
  return for_each_plate(facts, id, trace, [&](std::size_t i) {
    return plate_against(id, facts, i,
                         resistances::through_bolt_steel(facts.plan.inserts[i], facts.rules, facts.tables, trace),
                         "the bolt breaks", "a thicker bolt, or one of stronger steel", trace);
  });
}

}  // namespace firstpick::checks
