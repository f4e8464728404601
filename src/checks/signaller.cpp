// One person gives the signals, and the operator knows who.
//
// Source   signallers are named in the lift plan of BC OHSR 14.42.1; accident reports
//          (docs/rules/signaller.md).
// Absent   HOLD. false: fail.

#include "checks/rule.hpp"
#include "checks/stage_tick.hpp"

namespace firstpick::checks {

std::vector<Finding> signaller(const StageFacts& facts, Trace&) {
  return {ticked("signaller", facts, facts.stage.signaller, "nobody is named who gives the signals",
                 "name one person; the crane moves on the signals of that person only")};
}

}  // namespace firstpick::checks
