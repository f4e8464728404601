// The sling of a leg, with what the gear rules need from it.
#pragma once

#include <algorithm>

#include <fmt/format.h>

#include "checks/stage_facts.hpp"
#include "checks/worst_leg.hpp"

namespace firstpick::checks {

// Not assessed: the leg names no gear, or the plan does not give the rating on the sling's tag.
inline Outcome<const plan::Sling*> sling_of(const StageFacts& facts, std::size_t leg) {
  const plan::Leg& l = facts.rigging->legs[leg];
  if (l.gear.empty())
    return NotAssessed{fmt::format("the leg to {} names no gear", l.to), "legs = [ { to, length, gear = \"...\" } ]"};
  const auto found = std::ranges::find(facts.plan.slings, l.gear, &plan::Sling::id);
  if (found == facts.plan.slings.end()) return NotAssessed{fmt::format("there is no sling '{}'", l.gear), {}};
  if (!found->rated)
    return NotAssessed{fmt::format("the rating on the tag of sling '{}' is not in the plan", l.gear),
                       "[[sling]] rated = \"...\", as the tag says for one vertical leg"};
  return &*found;
}

inline Outcome<Demand<Force>> demand_of(const Outcome<WorstLeg>& worst) {
  if (const auto* gap = std::get_if<NotAssessed>(&worst)) return *gap;
  return Demand<Force>{std::get<WorstLeg>(worst).tension};
}

}  // namespace firstpick::checks
