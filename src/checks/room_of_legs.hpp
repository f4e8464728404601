// What of a rigging has no room, as the piece hangs or at the angles of a turn.
#pragma once

#include <string>
#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct TooNear {
  enum class Kind { through, near_concrete, near_each_other, through_beam, hooks };
  Kind kind = Kind::through;
  std::string what;       // "the leg to A1", "the hook", "beam B", "the leg to A1 and beam B", "hooks n and s"
  Length length{};        // inside the concrete; else the distance
  Length least{};         // that it should have; zero where it goes through
  std::string situation;  // "turned to 30 deg", "without form parts"; empty: as it hangs
};

// Of each thing the worst, once. Not assessed: the statics, or a solid that cannot be asked.
Outcome<std::vector<TooNear>> room_of_legs(const StageFacts& facts);

}  // namespace firstpick::checks
