// The crane of the second hook in a turn between two hooks.
#pragma once

#include <optional>

#include "checks/finding.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Nothing in any other stage.
const plan::Turn* turn_between_two_hooks(const plan::Stage& stage);

//   r_tail W_crane + rigging + block <= rated        r_tail: largest share of the load on that hook
// Missing: no second crane, one that is the first, its rating, its block or the weight of its rigging.
Finding tail_crane_finding(std::string_view rule, const StageFacts& facts, Trace& trace);

}  // namespace firstpick::checks
