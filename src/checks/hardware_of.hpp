// What takes hold of the insert at the end of a leg.
#pragma once

#include <algorithm>

#include <fmt/format.h>

#include "checks/stage_facts.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

// Not assessed: the leg names no hardware, or one that the plan does not define.
inline Outcome<const plan::Hardware*> hardware_of(const StageFacts& facts, std::size_t leg) {
  const plan::Leg& l = facts.rigging->legs.at(leg);
  if (!is_stated(l.hardware))
    return NotAssessed{"what takes hold of the inserts is not in the plan",
                       "[[hardware]] id, kind, size, rated, design_factor, inspected; "
                       "legs = [ { to, length, gear, hardware = \"...\" } ]"};
  const auto found = std::ranges::find(facts.plan.hardware, l.hardware, &plan::Hardware::id);
  if (found == facts.plan.hardware.end())
    return NotAssessed{fmt::format("there is no hardware '{}'", l.hardware), "[[hardware]] id = \"...\""};
  return &*found;
}

}  // namespace firstpick::checks
