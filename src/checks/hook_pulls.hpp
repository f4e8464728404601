// What each of several hooks holds, along the rope that it hangs on.
//
//   R_h = sum of the pulls of its legs        delta_h = angle between R_h and the sum of all R_h, which is plumb
//
// Source: statics. All loads are straight down, so that the pulls of all hooks together are straight up.
#pragma once

#include <string>
#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct HookPull {
  std::string hook;
  Force along{};      // |R_h|
  Angle off_plumb{};  // zero of a hook that holds nothing; not a number where all together hold nothing
};

struct HookPulls {
  std::vector<HookPull> hooks;  // in the order of the rigging
  Force all{};                  // of the sum
};

// Of a rigging with hooks of its own.
HookPulls hook_pulls(const StageFacts& facts, const Situation& situation);

}  // namespace firstpick::checks
