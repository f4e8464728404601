// Tension in bending at which the uncracked piece cracks: the modulus of rupture.
//
//   f_r = k_r lambda sqrt(f)
//
// Source   ACI 318-25 19.2.3.1, k_r is "cracking.rupture" of the rule set. lambda for lightweight concrete is that of
//          cast-in anchors, "lambda_a" in tables/concretes.toml, the same number.
// f        the strength shown for this lift, never that of 28 days. Below the floor of the anchor formulas it is lowered as
//          for them (strength/formula_strength.cpp): the root law is not trusted in very young concrete here either.

#include "resistances/cracking_stress.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Stress>> cracking_stress(const plan::Concrete& concrete, Stress strength,
                                            const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace) {
  if (!(strength > Stress{}) || !is_finite(strength))
    return NotAssessed{"the strength of the concrete is not a usable number", {}};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{"the kind of concrete is not in the tables", "[concrete] kind = \"normalweight\""};
  const auto& lambda = kind->second.lambda_a;
  const auto& k_r = rules.cracking.rupture;
  const Stress f_r = k_r.value * lambda.value * root(strength);
  trace.add([&] {
    return Step{.words = "tension in bending at which the piece cracks",
                .result = {"f_r", in(MPa, f_r), "MPa"},
                .formula = "k_r * lambda * sqrt(f)",
                .given = {{"k_r", in(root(MPa), k_r.value), "MPa^0.5"},
                          {"lambda", lambda.value.value(), "1"},
                          {"f", in(MPa, strength), "MPa"}},
                .clause = "ACI 318-25 19.2.3.1",
                .sources = {k_r.source, lambda.source}};
  });
  return Resistance<Stress>{f_r};
}

}  // namespace firstpick::resistances
