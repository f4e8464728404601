// Modulus of elasticity of concrete at the strength of the lift.
//
//   E_c = k_E sqrt(f)                          ACI 318-25 19.2.2.1
//   E_c = E_10 ((f + df_cm) / 10 MPa)^0.3      EN 1992-1-1 table 3.1, where the rule set names it
//
// Source   "bars.concrete_modulus", or "bars.E_cm" and "bars.mean_over", of the rule set. EN 1992-1-1 (3.5) is the same:
//          E_cm(t) = (f_cm(t) / f_cm)^0.3 E_cm.
// Range    normalweight concrete.

#include "resistances/concrete_modulus.hpp"

#include <cmath>

namespace firstpick::resistances {

Outcome<Stress> concrete_modulus(const plan::Concrete& concrete, Stress strength, const tables::RuleSet& rules,
                                 const tables::Tables& tables, Trace& trace) {
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end() || kind->second.lambda_a.value != Ratio::from_value(1.0))
    return NotAssessed{"the modulus of elasticity of this kind of concrete is not in the tables", {}};
  if (!(strength > Stress{}) || !is_finite(strength))
    return NotAssessed{"the strength of the concrete is not a usable number", {}};
  const tables::BarModel& bars = rules.bars;
  if (!bars.E_cm || !bars.mean_over) {
    const Stress E_c = bars.concrete_modulus.value * root(strength);
    trace.add([&] {
      return Step{.words = "modulus of elasticity of the concrete at this strength",
                  .result = {"E_c", in(MPa, E_c), "MPa"},
                  .formula = "k_E * sqrt(f)",
                  .given = {{"k_E", in(root(MPa), bars.concrete_modulus.value), "MPa^0.5"},
                            {"f", in(MPa, strength), "MPa"}},
                  .clause = "ACI 318-25 19.2.2.1",
                  .sources = {bars.concrete_modulus.source}};
    });
    return E_c;
  }
  const double f_cm_MPa = in(MPa, Stress{strength + bars.mean_over->value});
  const Stress E_c = bars.E_cm->value * std::pow(f_cm_MPa / 10.0, 0.3);
  trace.add([&] {
    return Step{.words = "modulus of elasticity of the concrete at this strength",
                .result = {"E_c", in(MPa, E_c), "MPa"},
                .formula = "E_10 * ((f + df_cm) / 10)^0.3",
                .given = {{"E_10", in(MPa, bars.E_cm->value), "MPa"},
                          {"f", in(MPa, strength), "MPa"},
                          {"df_cm", in(MPa, bars.mean_over->value), "MPa"}},
                .clause = "EN 1992-1-1 table 3.1",
                .sources = {bars.E_cm->source, bars.mean_over->source}};
  });
  return E_c;
}

}  // namespace firstpick::resistances
