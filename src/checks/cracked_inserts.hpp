#pragma once

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Sets facts.as_cracked by the rule set. To be called before the modes of the inserts are computed, with the strength they
// will be computed for; `bending_is_known`: the situations of the stage are.
void count_cracks(StageFacts& facts, bool bending_is_known);

}  // namespace firstpick::checks
