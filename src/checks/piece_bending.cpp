#include "checks/piece_bending.hpp"

#include <algorithm>

#include "resistances/cracking_stress.hpp"

namespace firstpick::checks {

std::shared_ptr<BendingMemo> KnownBending::of_stage(std::size_t stage) {
  while (stages_.size() <= stage) stages_.push_back(std::make_shared<BendingMemo>());
  return stages_[stage];
}

namespace {

constexpr double upright_as_cast = 1.0 - 1e-9;  // of the cosine between up as cast and up in this stage

}  // namespace

std::optional<NotAssessed> bending_gap(const StageFacts& facts) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.gear_situations)) return *gap;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.up_before)) return *gap;
  return {};
}

bool is_turned(const StageFacts& facts) {
  return facts.stage.kind == plan::StageKind::turn || std::get<Direction>(facts.up_before).z < upright_as_cast;
}

Outcome<Resistance<Stress>> cracking_stress_of(const StageFacts& facts, Trace& trace) {
  Outcome<Resistance<Stress>> rupture = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) rupture = *gap;
  else
    rupture = resistances::cracking_stress(facts.plan.concrete, std::get<Stress>(facts.formula_strength),
                                           facts.body.highest.z - facts.body.lowest.z, facts.rules,
                                           facts.tables, trace);
  const auto& factor = facts.rules.cracking.factor;
  trace.add([&] {
    return Step{.words = "factor between the cracking stress and the tension allowed",
                .result = {"SF_r", factor.value.value(), "1"},
                .sources = {factor.source}};
  });
  return rupture;
}

std::string_view cracking_clause(const StageFacts& facts) {
  return facts.rules.cracking.en ? "EN 1992-1-1 3.1.8" : "ACI 318-25 19.2.3.1";
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
