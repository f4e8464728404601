//   r_bend = max(1, m W_b / F), W_b = W + W_att        F: the heaviest load set of the stage, with dynamic factor and grip
//
// A lighter set of the stage counts with its own F: its loads are raised by what is left before they bend the piece.
//
// Source   "bending_multiplier" of the rule set, by stage, product and face of the form: equivalent static loads meant for
//          bending. The multiplier and the loads computed one by one are alternatives; the larger counts.
// Product  "[form] product"; without it the largest multiplier of the stage.

#include "checks/bending_multiplier.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>

#include "plan/form_state.hpp"

namespace firstpick::checks {

namespace {

struct Chosen {
  const Sourced<Ratio>* multiplier = nullptr;  // null: none for this product
  bool any_for_stage = false;
  std::string known, product;
};

Chosen chosen_multiplier(const StageFacts& facts) {
  Chosen chosen;
  chosen.product = facts.plan.form ? facts.plan.form->product : "";
  const bool out_of_form = plan::comes_out_of_form(facts.plan, facts.stage);
  const std::string stage(plan::word_for(out_of_form ? plan::StageKind::strip : facts.stage.kind));
  for (const auto& [of, multiplier] : facts.rules.bending_multiplier) {
    if (!of.starts_with(stage + ".")) continue;
    chosen.any_for_stage = true;
    const std::string name = of.substr(stage.size() + 1);
    chosen.known += (chosen.known.empty() ? "'" : ", '") + name + "'";
    if (!chosen.product.empty() && name != chosen.product && name != "any.any") continue;
    if (!chosen.multiplier || (is_finite(chosen.multiplier->value) && !(multiplier.value <= chosen.multiplier->value)))
      chosen.multiplier = &multiplier;  // one that is no number stays, and raises to no number
  }
  return chosen;
}

Force heaviest_of(const loads::StageLoad& load) {
  Force heaviest{};
  for (const loads::LoadSet& set : load.gear_loads) heaviest = std::max(heaviest, set.total);
  return heaviest;
}

Ratio at_least_one(Ratio raise) { return raise <= Ratio::from_value(1.0) ? Ratio::from_value(1.0) : raise; }

Ratio raise_to(Ratio multiplier, const loads::StageLoad& load, Force total) {
  return at_least_one(multiplier * ((load.weight + load.attached) / total));
}

}  // namespace

Ratio lighter_set_raise(const StageFacts& facts, Force total) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const Chosen chosen = chosen_multiplier(facts);
  if (!chosen.multiplier) return Ratio::from_value(1.0);
  return at_least_one(raise_to(chosen.multiplier->value, load, total) /
                      raise_to(chosen.multiplier->value, load, heaviest_of(load)));
}

Outcome<Ratio> bending_raise(const StageFacts& facts, Trace& trace) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const Chosen found = chosen_multiplier(facts);
  const Sourced<Ratio>* const chosen = found.multiplier;
  if (!found.any_for_stage) return Ratio::from_value(1.0);
  if (!chosen)
    return NotAssessed{fmt::format("the rule set has no bending multiplier for product '{}'", found.product),
                       "[form] product: " + found.known};
  const Force heaviest = heaviest_of(load);
  const Force weight = load.weight + load.attached;
  const Ratio raise = raise_to(chosen->value, load, heaviest);
  trace.add([&] {
    return Step{.words = "raise of the loads to the equivalent static load for bending",
                .result = {"r_bend", raise.value(), "1"},
                .formula = "max(1, m * W_b / F)",
                .given = {{"m", chosen->value.value(), "1"}, {"W_b", in(kN, weight), "kN"}, {"F", in(kN, heaviest), "kN"}},
                .sources = {chosen->source}};
  });
  return raise;
}

}  // namespace firstpick::checks
