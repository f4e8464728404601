// The piece is held from turning while it hangs.
//
// Source   tag lines where rotation could endanger a worker: Ontario O.Reg 213/91 s. 179(1)
//          (docs/rules/tag-line.md).
// Absent   HOLD. false: fail.

#include "checks/rule.hpp"
#include "checks/stage_tick.hpp"

namespace firstpick::checks {

std::vector<Finding> tag_line(const StageFacts& facts, Trace&) {
  return {ticked("tag-line", facts, facts.stage.tag_line, "nothing holds the piece from turning as it hangs",
                 "put tag lines on, without a loop that could snag")};
}

}  // namespace firstpick::checks
