#include "checks/piece_bending.hpp"

#include <algorithm>

namespace firstpick::checks {

std::shared_ptr<BendingMemo> KnownBending::of_stage(std::size_t stage) {
  while (stages_.size() <= stage) stages_.push_back(std::make_shared<BendingMemo>());
  return stages_[stage];
}

Outcome<BendingLoads> bending_loads(const StageFacts& facts, const Situation& situation) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const auto set = std::ranges::find_if(load.gear_loads, [&](const loads::LoadSet& each) {
    return situation.name == each.name || situation.name.starts_with(each.name + ",");
  });
  const std::size_t attached = facts.plan.form ? facts.plan.form->attached.size() : 0;
  if (set == load.gear_loads.end() || set->loads.size() < 1 + attached)
    return NotAssessed{"the loads of a situation are not known", {}};
  return BendingLoads{*set, attached, situation};
}

}  // namespace firstpick::checks
