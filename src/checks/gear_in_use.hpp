// What the load hangs on in a stage: the slings and the hardware of its legs, beams, sheaves and the cranes.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/crane_hook_load.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct GearInUse {
  std::string_view section;  // of the plan: "sling", "hardware", "rigging.beam", ..., "crane"
  std::string id;
  std::optional<plan::Day> inspected;
};

// Each once, in the order of the legs; a name that the plan does not define is left to the rule that needs
// it.
inline std::vector<GearInUse> gear_in_use(const StageFacts& facts) {
  std::vector<GearInUse> gear;
  const auto add = [&](std::string_view section, const auto& all, const std::string& id) {
    const auto found = std::ranges::find_if(all, [&](const auto& each) { return each.id == id; });
    if (found == all.end()) return;
    const bool known = std::ranges::any_of(
        gear, [&](const GearInUse& other) { return other.section == section && other.id == id; });
    if (!known) gear.push_back({section, id, found->inspected});
  };
  if (facts.rigging) {
    for (const plan::Leg& leg : facts.rigging->legs) {
      add("sling", facts.plan.slings, leg.gear);
      add("hardware", facts.plan.hardware, leg.hardware);
    }
    for (const plan::Beam& beam : facts.rigging->beams) add("rigging.beam", facts.rigging->beams, beam.id);
    for (const plan::Sheave& sheave : facts.rigging->sheaves)
      add(sheave.rolls ? "rigging.sheave" : "rigging.link", facts.rigging->sheaves, sheave.id);
    if (!facts.rigging->equalised.empty())
      gear.push_back({"rigging", "the sheaves at the hook", facts.rigging->equaliser_inspected});
  }
  for (const LiftingCrane& lifting : cranes_of(facts)) add("crane", facts.plan.cranes, lifting.id);
  return gear;
}

}  // namespace firstpick::checks
