// Largest shear stress of a section of plain concrete.
//
//   v_n = 3/2 k_v lambda sqrt(f)          V_n = k_v lambda sqrt(f) b h, and in a rectangle the largest stress is 3/2 of the mean
//
// Source   ACI 318-19 14.5.5.1, k_v is "cracking.shear" of the rule set; lambda as in cracking_stress.cpp.
// EN       v_n = alpha_pl f_ctk, f_ctk = 0.7 f_ctm: EN 1992-1-1 12.3.1 and 12.6.3 without compression, where the rule set
//          names the tension of EN 1992-1-1; f_ctm as in en_mean_tension.cpp.
// f        as in cracking_stress.cpp.

#include "resistances/plain_shear.hpp"

#include "resistances/en_mean_tension.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Stress>> plain_shear(const plan::Concrete& concrete, Stress strength, const tables::RuleSet& rules,
                                        const tables::Tables& tables, Trace& trace) {
  if (!(strength > Stress{}) || !is_finite(strength))
    return NotAssessed{"the strength of the concrete is not a usable number", {}};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{"the kind of concrete is not in the tables", "[concrete] kind = \"normalweight\""};
  const auto& lambda = kind->second.lambda_a;
  if (!rules.cracking.en) {
    const auto& k_v = rules.cracking.shear;
    const Stress v_n = 1.5 * k_v.value * lambda.value * root(strength);
    trace.add([&] {
      return Step{.words = "shear stress at which concrete without bars breaks",
                  .result = {"v_n", in(MPa, v_n), "MPa"},
                  .formula = "3 / 2 * k_v * lambda * sqrt(f)",
                  .given = {{"k_v", in(root(MPa), k_v.value), "MPa^0.5"},
                            {"lambda", lambda.value.value(), "1"},
                            {"f", in(MPa, strength), "MPa"}},
                  .clause = "ACI 318-19 14.5.5.1",
                  .sources = {k_v.source, lambda.source}};
    });
    return Resistance<Stress>{v_n};
  }
  if (lambda.value != 1.0)
    return NotAssessed{"EN 1992-1-1 3.1.2 is for normal concrete, and this is " + concrete.kind,
                       "a rule set whose formulas cover this concrete"};
  const auto& en = *rules.cracking.en;
  const Stress f_ctm = en_mean_tension(strength, en, trace);
  const Stress v_n = en.plain.value * en.f_ctk.value * f_ctm;
  trace.add([&] {
    return Step{.words = "shear stress at which concrete without bars breaks",
                .result = {"v_n", in(MPa, v_n), "MPa"},
                .formula = "alpha_pl * k_05 * f_ctm",
                .given = {{"alpha_pl", en.plain.value.value(), "1"},
                          {"k_05", en.f_ctk.value.value(), "1"},
                          {"f_ctm", in(MPa, f_ctm), "MPa"}},
                .clause = "EN 1992-1-1 12.6.3",
                .sources = {en.plain.source, en.f_ctk.source}};
  });
  return Resistance<Stress>{v_n};
}

}  // namespace firstpick::resistances
