// Every hook has a latch that closes.
//
// Source   latches on hooks: Quebec S-2.1 r.13 s. 255; a fatal lift of 1997 in which a slack hook without
//          latch turned out of its loop (docs/rules/hook-latch.md).
// Absent   HOLD. false: fail.

#include "checks/rule.hpp"
#include "checks/stage_tick.hpp"

namespace firstpick::checks {

std::vector<Finding> hook_latch(const StageFacts& facts, Trace&) {
  return {ticked("hook-latch", facts, facts.stage.hook_latch, "a hook has no latch that closes",
                 "use another hook: a slack one without latch turns out of its loop")};
}

}  // namespace firstpick::checks
