#include "checks/hung_rigging.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "checks/named.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

Outcome<Force> weight_of(const std::optional<Force>& weight, std::string_view kind, const std::string& id) {
  if (weight) return *weight;
  return NotAssessed{fmt::format("the weight of {} '{}' is not in the plan", kind, id),
                     fmt::format("[[rigging.{}]] weight = \"...\"", kind)};
}

// Beams, then sheaves, as carrier_end() counts them.
Outcome<std::vector<demands::Carrier>> carriers_of(const plan::Rigging& rigging) {
  std::vector<demands::Carrier> carriers;
  for (const plan::Beam& beam : rigging.beams) {
    const auto weight = weight_of(beam.weight, "beam", beam.id);
    if (const auto* gap = std::get_if<NotAssessed>(&weight)) return *gap;
    carriers.push_back({"beam " + beam.id, std::get<Force>(weight), beam.centre, false});
  }
  for (const plan::Sheave& sheave : rigging.sheaves) {
    const auto weight = weight_of(sheave.weight, plan::kind_of(sheave), sheave.id);
    if (const auto* gap = std::get_if<NotAssessed>(&weight)) return *gap;
    carriers.push_back({fmt::format("{} {}", plan::kind_of(sheave), sheave.id), std::get<Force>(weight), {}, true});
  }
  return carriers;
}

Force by_size(Stress modulus, Length size) { return modulus * (size * size); }

Force nearly_rigid(const tables::RuleSet& rules, const loads::LoadSet& set) {
  return rules.leg_stiffness_ratio.value * set.total;
}

// What a leg of this sling has: stated, by its size, or nearly rigid.
Force stiffness_of(const plan::Sling* sling, const tables::Tables& tables, Force rigid) {
  if (sling && sling->axial_stiffness) return *sling->axial_stiffness;
  if (sling)
    if (const auto* modulus = stiffness_by_size(*sling, tables)) return by_size(modulus->value, *sling->size);
  return rigid;
}

Outcome<demands::HungLeg> hung_leg(const plan::Leg& leg, const plan::Plan& plan, const plan::Rigging& rigging,
                                   const tables::Tables& tables, Force rigid) {
  if (!leg.length)
    return NotAssessed{fmt::format("the leg to {} has no length", leg.to), "legs = [ { to, length = \"2.6 m\", gear } ]"};
  demands::HungLeg hung{.to = leg.to,
                        .at = {},
                        .length = *leg.length,
                        .axial_stiffness = stiffness_of(named(plan.slings, leg.gear), tables, rigid)};
  if (const plan::Insert* insert = named(plan.inserts, leg.to)) {
    hung.at = insert->at;
  } else if (const auto end = plan::carrier_end(rigging, leg.to)) {
    hung.at = end->at;
    hung.to_carrier = end->carrier;
  } else {
    return NotAssessed{fmt::format("leg to '{}': there is no such insert", leg.to), {}};
  }
  if (leg.from.empty()) return hung;
  if (const auto end = plan::carrier_end(rigging, leg.from)) {
    hung.from_carrier = end->carrier;
    hung.from_at = end->at;
  } else if (const plan::Hook* hook = plan::hook_named(rigging, leg.from)) {
    hung.from_at = hook->at - rigging.hooks.front().at;
  } else {
    return NotAssessed{fmt::format("leg from '{}': there is no such hook, beam point or sheave", leg.from), {}};
  }
  return hung;
}

}  // namespace

const Sourced<Stress>* stiffness_by_size(const plan::Sling& sling, const tables::Tables& tables) {
  if (sling.axial_stiffness || !sling.size) return nullptr;
  const auto kind = tables.slings.find(sling.kind);
  if (kind == tables.slings.end() || !kind->second.axial_modulus) return nullptr;
  return &*kind->second.axial_modulus;
}

bool has_stiffness_by_size(const plan::Plan& plan, const plan::Rigging& rigging, const tables::Tables& tables) {
  return std::ranges::any_of(rigging.legs, [&](const plan::Leg& leg) {
    const plan::Sling* sling = named(plan.slings, leg.gear);
    return sling && stiffness_by_size(*sling, tables);
  });
}

void record_stiffness(const plan::Plan& plan, const plan::Rigging* rigging, const tables::Tables& tables, Trace& trace) {
  if (!rigging) return;
  for (const plan::Sling& sling : plan.slings) {
    const auto* modulus = stiffness_by_size(sling, tables);
    if (!modulus || std::ranges::find(rigging->legs, sling.id, &plan::Leg::gear) == rigging->legs.end()) continue;
    trace.add([&] {
      return Step{.words = fmt::format("stiffness of a leg of {}, by its size; nearly rigid legs are computed beside it",
                                       sling.id),
                  .result = {"EA", in(kN, by_size(modulus->value, *sling.size)), "kN"},
                  .formula = "k_EA * d * d",
                  .given = {{"k_EA", in(MPa, modulus->value) / 1000.0, "GPa"}, {"d", in(mm, *sling.size), "mm"}},
                  .sources = {modulus->source}};
    });
  }
}

Outcome<demands::HungPiece> hung_piece(const plan::Plan& plan, const plan::Rigging* rigging,
                                       const loads::LoadSet& set, const tables::RuleSet& rules,
                                       const tables::Tables& tables) {
  if (!rigging) return NotAssessed{"the stage names no rigging", "[[stage]] rigging = \"...\""};
  demands::HungPiece hung;
  hung.loads = set.loads;
  auto carriers = carriers_of(*rigging);
  if (const auto* gap = std::get_if<NotAssessed>(&carriers)) return *gap;
  hung.carriers = std::move(std::get<std::vector<demands::Carrier>>(carriers));
  for (const plan::Leg& leg : rigging->legs) {
    auto one = hung_leg(leg, plan, *rigging, tables, nearly_rigid(rules, set));
    if (const auto* gap = std::get_if<NotAssessed>(&one)) return *gap;
    hung.legs.push_back(std::move(std::get<demands::HungLeg>(one)));
  }
  for (const auto& group : rigging->equalised) {
    std::vector<std::size_t> legs;
    for (const auto& id : group)
      for (std::size_t i = 0; i < rigging->legs.size(); ++i)
        if (rigging->legs[i].to == id.value) legs.push_back(i);
    hung.equalised.push_back(std::move(legs));
  }
  for (const plan::Sheave& sheave : rigging->sheaves) {
    if (!sheave.rolls) continue;
    std::vector<std::size_t> rope;
    for (std::size_t i = 0; i < rigging->legs.size(); ++i)
      if (rigging->legs[i].from == sheave.id) rope.push_back(i);
    hung.equalised.push_back(std::move(rope));
  }
  return hung;
}

demands::HungPiece on_nearly_rigid_legs(demands::HungPiece hung, const plan::Plan& plan,
                                        const plan::Rigging& rigging, const loads::LoadSet& set,
                                        const tables::RuleSet& rules) {
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    const plan::Sling* sling = named(plan.slings, rigging.legs[leg].gear);
    if (!sling || !sling->axial_stiffness) hung.legs.at(leg).axial_stiffness = nearly_rigid(rules, set);
  }
  return hung;
}

}  // namespace firstpick::checks
