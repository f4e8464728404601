// Nobody can get under the piece, or where it may swing.
//
// Source   29 CFR 1926.704(e); accident reports (docs/rules/exclusion-zone.md).
// Absent   HOLD. false: fail.

#include "checks/rule.hpp"
#include "checks/stage_tick.hpp"

namespace firstpick::checks {

std::vector<Finding> exclusion_zone(const StageFacts& facts, Trace&) {
  return {ticked("exclusion-zone", facts, facts.stage.exclusion_zone, "people can get under the piece",
                 "clear and close off the place under the piece and where it may swing")};
}

}  // namespace firstpick::checks
