// Tension and shear at once, from the largest utilization of each: n and v.
//
//   v <= 0.2 : n        n <= 0.2 : v        else (n + v) / 1.2
//
// Source   ACI 318-19 17.8.1 to 17.8.3; 0.2 and 1.2 in the rule set. At the limits the result jumps, as the
//          clause does.

#include "resistances/interaction.hpp"

#include <algorithm>
#include <limits>

#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"

namespace firstpick::resistances {

Ratio interaction_utilization(Ratio tension, Ratio shear, const tables::HeadedInsertModel& model,
                              Trace& trace) {
  const auto is_utilization = [](Ratio number) { return is_finite(number) && number >= 0.0; };
  if (!is_utilization(tension) || !is_utilization(shear)) return std::numeric_limits<double>::quiet_NaN();

  const Ratio small = model.interaction_small.value, sum = model.interaction_sum.value;
  const bool tension_alone = shear <= small, shear_alone = tension <= small;
  const Ratio utilization = tension_alone ? tension : shear_alone ? shear : Ratio{(tension + shear) / sum};
  trace.add([&] {
    return Step{.words = tension_alone ? "shear is small: all of the tension strength counts"
                         : shear_alone ? "tension is small: all of the shear strength counts"
                                       : "tension and shear together",
                .result = lb_in("n_v", utilization),
                .formula = tension_alone ? "n"
                           : shear_alone ? "v"
                                         : "(n + v) / k_sum",
                .given = {lb_in("n", tension), lb_in("v", shear), lb_in("k_sum", sum)},
                .clause = tension_alone ? "ACI 318-19 17.8.1"
                          : shear_alone ? "ACI 318-19 17.8.2"
                                        : "ACI 318-19 17.8.3",
                .sources = {model.interaction_small.source, model.interaction_sum.source}};
  });
  return utilization;
}

Ratio interaction_utilization(const Uses& uses, const tables::HeadedInsertModel& model, Trace& trace) {
  const auto larger = [](Ratio a, Ratio b) { return is_finite(a) && is_finite(b) ? std::max(a, b) : a + b; };
  if (!model.en)
    return interaction_utilization(larger(uses.steel_tension, uses.concrete_tension),
                                   larger(uses.steel_shear, uses.concrete_shear), model, trace);
  const Ratio steel = en_steel_interaction(uses.steel_tension, uses.steel_shear, *model.en, trace);
  const Ratio concrete =
      uses.power_of_bars
          ? en_interaction_beside_bars(uses.concrete_tension, uses.concrete_shear, *uses.power_of_bars, trace)
          : en_concrete_interaction(uses.concrete_tension, uses.concrete_shear, model, trace);
  return larger(steel, concrete);
}

}  // namespace firstpick::resistances
