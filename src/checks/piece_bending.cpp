#include "checks/piece_bending.hpp"

#include <algorithm>

#include "checks/bending_multiplier.hpp"
#include "resistances/cracking_stress.hpp"

namespace firstpick::checks {

std::shared_ptr<BendingMemo> KnownBending::of_stage(std::size_t stage) {
  while (stages_.size() <= stage) stages_.push_back(std::make_shared<BendingMemo>());
  return stages_[stage];
}

namespace {

constexpr double upright_as_cast = 1.0 - 1e-9;  // of the cosine between up as cast and up in this stage

}  // namespace

bool is_in_box_around(const piece::Body& body, const std::vector<Position>& line) {
  constexpr Length on_its_face = 1e-6 * m;
  const auto within = [&](Length at, Length low, Length high) {
    return at >= low - on_its_face && at <= high + on_its_face;
  };
  return std::ranges::all_of(line, [&](const Position& p) {
    return within(p.x, body.lowest.x, body.highest.x) && within(p.y, body.lowest.y, body.highest.y) &&
           within(p.z, body.lowest.z, body.highest.z);
  });
}

const Outcome<BendingTension>& bending_tension(const StageFacts& facts, const ModelChoice& model) {
  const auto hung = [&]() -> Outcome<BendingTension> {
    if (model.model == plan::PieceModel::line) return line_tension(facts, model);
    if (model.model == plan::PieceModel::panel) return panel_tension(facts, model);
    if (model.known == Known::ring) return ring_tension(facts);
    if (model.known == Known::box) return box_tension(facts);
    return NotAssessed{"the bending of a block is not computed", std::string(own_bending_check)};
  };
  auto& known = facts.bending->tension;
  if (!known) known = is_turned(facts) ? turned_panel_tension(facts) : hung();
  return *known;
}

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
  return cracking_stress_of(facts, trace, facts.body.highest.z - facts.body.lowest.z);
}

Outcome<Resistance<Stress>> cracking_stress_of(const StageFacts& facts, Trace& trace, Length depth) {
  Outcome<Resistance<Stress>> rupture = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) rupture = *gap;
  else
    rupture = resistances::cracking_stress(facts.plan.concrete, std::get<Stress>(facts.formula_strength),
                                           depth, facts.rules, facts.tables, trace);
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

Outcome<BendingLoads> loads_as_they_are(const StageFacts& facts, const Situation& situation) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const auto set = std::ranges::find_if(load.gear_loads, [&](const loads::LoadSet& each) {
    return situation.name == each.name || situation.name.starts_with(each.name + ",");
  });
  const std::size_t attached = facts.plan.form ? facts.plan.form->attached.size() : 0;
  if (set == load.gear_loads.end() || set->loads.size() < 1 + attached)
    return NotAssessed{"the loads of a situation are not known", {}};
  return BendingLoads{*set, attached, situation};
}

Outcome<BendingLoads> bending_loads(const StageFacts& facts, const Situation& situation) {
  auto found = loads_as_they_are(facts, situation);
  if (!is_assessed(found) || !is_assessed(facts.up_before) || is_turned(facts)) return found;
  auto& loads = std::get<BendingLoads>(found);
  const Ratio raise = lighter_set_raise(facts, loads.set.total);
  if (raise == Ratio::from_value(1.0)) return found;
  loads.set.total *= raise;
  for (loads::AppliedLoad& each : loads.set.loads) each.force *= raise;
  for (demands::LegForce& leg : loads.situation.legs) {
    leg.tension *= raise;
    leg.on_insert = raise.value() * leg.on_insert;
  }
  return found;
}

}  // namespace firstpick::checks
