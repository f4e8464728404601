// Everything that pulls down on the piece in one stage.
//
//   F = phi (W + W_att) + F_adh        adhesion is broken slowly: the dynamic factor does not multiply it
//
// Source   load model of CEN/TR 15728, from memory. In the text as read (2008, cl. 10), dynamic factors, form
//          friction and adhesion are the precaster's to give.
// Inputs   one rule each: weight, attached, adhesion, dynamic_factor. Whether the crane's rating is compared
//          with the adhesion too is the rule set's choice; what the insert factor multiplies: load_sets.

#include "loads/stage_load.hpp"

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "loads/adhesion.hpp"
#include "loads/attached.hpp"
#include "loads/dynamic_factor.hpp"
#include "loads/load_sets.hpp"
#include "plan/form_state.hpp"

namespace firstpick::loads {

namespace {

bool is_usable(const std::vector<LoadSet>& sets) {
  const auto usable = [](const AppliedLoad& load) {
    return is_finite(load.force) && is_finite(load.at.x) && is_finite(load.at.y) && is_finite(load.at.z);
  };
  return std::ranges::all_of(sets, [&](const LoadSet& set) {
    return is_finite(set.total) && std::ranges::all_of(set.loads, usable);
  });
}

// Of what inserts are asked for, with grip of the form where there is some; a floor has a step of its own.
Force insert_total(const StageLoad& load) {
  const auto with_grip = std::ranges::find_if(load.insert_loads, [](const LoadSet& set) {
    return set.name.starts_with(breaking_free);
  });
  return with_grip == load.insert_loads.end() ? load.insert_loads.front().total : with_grip->total;
}

std::vector<Term> terms(const StageLoad& load) {
  return {{"phi", load.dynamic_factor.value(), "1"},
          {"W", in(kN, load.weight), "kN"},
          {"W_att", in(kN, load.attached), "kN"},
          {"F_adh", in(kN, load.adhesion), "kN"}};
}

// A partial safety format: which load is multiplied by which factor.
Step factored_step(const StageLoad& load, const tables::RuleSet& rules, const std::vector<Term>& all) {
  const tables::LoadFactors& factors = *rules.load_factors;
  const bool at_rest = rules.insert_load.value == tables::InsertLoad::weight_only;
  Step step{.words = at_rest ? "load on headed inserts: a factor on the weights, no dynamic factor, no adhesion"
                             : "load on headed inserts: one factor on weights with dynamic factor, one on the adhesion",
            .result = {"F_ins", in(kN, insert_total(load)), "kN"},
            .formula = at_rest ? "gamma_G * (W + W_att)" : "gamma_G * phi * (W + W_att) + gamma_adh * F_adh",
            .given = {{"gamma_G", factors.weight.value.value(), "1"}, all[1], all[2]},
            .sources = {rules.insert_load.source, factors.weight.source}};
  if (at_rest) return step;
  step.given.push_back(all[0]);
  step.given.push_back({"gamma_adh", factors.grip.value.value(), "1"});
  step.given.push_back(all[3]);
  step.sources.push_back(factors.grip.source);
  return step;
}

void record(const StageLoad& load, const tables::RuleSet& rules, Trace& trace) {
  const std::vector<Term> all = terms(load);
  const std::vector<Term> weights{all[1], all[2]}, weights_and_grip{all[1], all[2], all[3]};
  trace.add([&] {
    return Step{.words = "total load of the stage, for the legs",
                .result = {"F", in(kN, load.total), "kN"},
                .formula = "phi * (W + W_att) + F_adh",
                .given = all,
                .clause = "load model of CEN/TR 15728 (from memory)"};
  });
  if (load.floor > Force{})
    trace.add([&] {
      return Step{.words = "least load of the strip, on legs and inserts: the larger of the two counts",
                  .result = {"F_floor", in(kN, load.floor), "kN"},
                  .formula = "n_G * (W + W_att)",
                  .given = {{"n_G", rules.load_floor->value.value(), "1"}, all[1], all[2]},
                  .sources = {rules.load_floor->source}};
    });
  if (rules.load_factors) trace.add([&] { return factored_step(load, rules, all); });
  else trace.add([&] {
    const bool at_rest = rules.insert_load.value == tables::InsertLoad::weight_only;
    return Step{.words = at_rest ? "load that the insert factor multiplies: no dynamic factor, no adhesion"
                                 : "load that the insert factor multiplies: with dynamic factor and adhesion",
                .result = {"F_ins", in(kN, insert_total(load)), "kN"},
                .formula = at_rest ? "W + W_att" : "phi * (W + W_att) + F_adh",
                .given = at_rest ? weights : all,
                .sources = {rules.insert_load.source}};
  });
  trace.add([&] {
    const bool with_grip = rules.crane_load.value == tables::CraneLoad::with_adhesion;
    return Step{.words = "load of the piece on the crane, without rigging and block",
                .result = {"F_crane", in(kN, load.crane_load), "kN"},
                .formula = with_grip ? "W + W_att + F_adh" : "W + W_att",
                .given = with_grip ? weights_and_grip : weights,
                .sources = {rules.crane_load.source}};
  });
}

}  // namespace

Outcome<StageLoad> stage_load(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                              const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace) {
  const Outcome<Force> weight = loads::weight(plan, body, trace);
  if (const auto* missing = std::get_if<NotAssessed>(&weight)) return *missing;
  const Outcome<AttachedParts> attached = attached_parts(plan, body, trace, &stage);
  if (const auto* missing = std::get_if<NotAssessed>(&attached)) return *missing;
  const Outcome<Adhesion> grip = adhesion(plan, stage, body, tables, trace, rules.adhesion_least);
  if (const auto* missing = std::get_if<NotAssessed>(&grip)) return *missing;
  const Outcome<Ratio> phi = dynamic_factor(plan, stage, rules, tables, trace);
  if (const auto* missing = std::get_if<NotAssessed>(&phi)) return *missing;

  const LoadParts parts{{body.centroid, std::get<Force>(weight)},
                        std::get<AttachedParts>(attached).loads,
                        std::get<Adhesion>(grip).loads,
                        std::get<Ratio>(phi),
                        std::get<AttachedParts>(attached).may_be_off};
  StageLoad load;
  load.weight = parts.weight.force;
  load.attached = std::get<AttachedParts>(attached).total;
  load.adhesion = std::get<Adhesion>(grip).total;
  load.dynamic_factor = parts.dynamic_factor;
  load.total = parts.dynamic_factor * (load.weight + load.attached) + load.adhesion;
  std::optional<Ratio> floor;
  if (rules.load_floor && plan::comes_out_of_form(plan, stage)) floor = rules.load_floor->value;
  if (floor) load.floor = *floor * (load.weight + load.attached);
  load.insert_loads = insert_sets(parts, rules.insert_load.value, floor, rules.load_factors);
  load.gear_loads = moving_sets(parts, floor);
  load.crane_load = load.weight + load.attached;
  if (rules.crane_load.value == tables::CraneLoad::with_adhesion) load.crane_load += load.adhesion;

  if (!is_usable(load.insert_loads) || !is_usable(load.gear_loads) || !is_finite(load.total) ||
      !is_finite(load.crane_load))
    return NotAssessed{"a load or its point of application is not a usable number", {}};
  record(load, rules, trace);
  return load;
}

}  // namespace firstpick::loads
