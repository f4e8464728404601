// Everything that hangs on a crane in a stage: piece, attached parts, grip by the rule set, beams and sheaves, rigging,
// block.
#pragma once

#include <string>
#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// A crane or hoist that takes part in the stage.
struct LiftingCrane {
  std::string id;                      // "hook south" where the plan says neither for the hook nor for the stage
  const plan::Crane* crane = nullptr;  // null: the plan does not describe it
  const plan::Turn* second = nullptr;  // of the second hook of a turn: that turn
};

// Those of the rigging's hooks, each once; with one hook the one that the stage names, and in a turn between two hooks
// that of the second. Never empty.
std::vector<LiftingCrane> cranes_of(const StageFacts& facts);

//   W_hook = s (W_crane + W_carriers) + W_rigging + W_block
struct HookLoad {
  double share = 1.0;
  Force piece{}, carriers{}, rigging{}, block{};
  Force total() const { return share * (piece + carriers) + rigging + block; }
};

// Not assessed: the stage's load is not, or no rigging, no crane, no weight of rigging or block is stated; the two
// hooks of a turn are one crane.
Outcome<HookLoad> hook_load(const StageFacts& facts, const LiftingCrane& lifting);

Outcome<Force> crane_hook_load(const StageFacts& facts, const LiftingCrane& lifting);

}  // namespace firstpick::checks
