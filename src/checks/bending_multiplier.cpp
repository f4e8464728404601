//   r_bend = max(1, m (W + W_att) / F)        F: the heaviest load set of the stage, with dynamic factor and grip
//
// Source   "bending_multiplier" of the rule set, by stage, product and face of the form: equivalent static loads meant for
//          bending. The multiplier and the loads computed one by one are alternatives; the larger counts.
// Product  "[form] product"; without it the largest multiplier of the stage.

#include "checks/bending_multiplier.hpp"

#include <algorithm>
#include <string>

#include <fmt/format.h>

namespace firstpick::checks {

Outcome<Ratio> bending_raise(const StageFacts& facts, Trace& trace) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const std::string stage(plan::word_for(facts.stage.kind));
  const std::string product = facts.plan.form ? facts.plan.form->product : "";
  const Sourced<Ratio>* chosen = nullptr;
  bool any_for_stage = false;
  std::string known;
  for (const auto& [of, multiplier] : facts.rules.bending_multiplier) {
    if (!of.starts_with(stage + ".")) continue;
    any_for_stage = true;
    const std::string name = of.substr(stage.size() + 1);
    known += (known.empty() ? "'" : ", '") + name + "'";
    if (!product.empty() && name != product && name != "any.any") continue;
    if (!chosen || multiplier.value > chosen->value) chosen = &multiplier;
  }
  if (!any_for_stage) return Ratio::from_value(1.0);
  if (!chosen)
    return NotAssessed{fmt::format("the rule set has no bending multiplier for product '{}'", product),
                       "[form] product: " + known};
  Force heaviest{};
  for (const loads::LoadSet& set : load.gear_loads) heaviest = std::max(heaviest, set.total);
  const Force weight = load.weight + load.attached;
  const Ratio raise = std::max(Ratio::from_value(1.0), Ratio{chosen->value * (weight / heaviest)});
  trace.add([&] {
    return Step{.words = "raise of the loads to the equivalent static load for bending",
                .result = {"r_bend", raise.value(), "1"},
                .formula = "max(1, m * W / F)",
                .given = {{"m", chosen->value.value(), "1"}, {"W", in(kN, weight), "kN"}, {"F", in(kN, heaviest), "kN"}},
                .sources = {chosen->source}};
  });
  return raise;
}

}  // namespace firstpick::checks
