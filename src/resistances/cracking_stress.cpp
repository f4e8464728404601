// Tension in bending at which the uncracked piece cracks: the modulus of rupture.
//
//   f_r = k_r lambda sqrt(f)
//
// Source   ACI 318-25 19.2.3.1, k_r is "cracking.rupture" of the rule set. lambda for lightweight concrete is that of
//          cast-in anchors, "lambda_a" in tables/concretes.toml, the same number.
// EN       f_ctk,fl = 0.7 max(1.6 - h / 1000 mm; 1) f_ctm, EN 1992-1-1 table 3.1 and 3.1.8 (3.23), where the rule set
//          names it; f_ctm as in en_mean_tension.cpp, f_ck is f below, and h no less than the depth that bends.
// f        the strength shown for this lift, never that of 28 days. Below the floor of the anchor formulas it is lowered as
//          for them (strength/formula_strength.cpp): the root law is not trusted in very young concrete here either.

#include "resistances/cracking_stress.hpp"

#include <algorithm>

#include "resistances/en_mean_tension.hpp"

namespace firstpick::resistances {

namespace {

// In MPa and mm.
Outcome<Resistance<Stress>> en_cracking_stress(const std::string& kind, Stress f_ck, Length depth, Ratio lambda,
                                               const tables::En1992Tension& en, Trace& trace) {
  if (lambda != 1.0)
    return NotAssessed{"EN 1992-1-1 3.1.2 is for normal concrete, and this is " + kind,
                       "a rule set whose formulas cover this concrete"};
  if (!(depth > Length{}) || !is_finite(depth)) return NotAssessed{"the depth of the piece is not a usable number", {}};
  const Stress f_ctm = en_mean_tension(f_ck, en, trace);
  const Ratio by_depth =
      std::max(Ratio{1.0}, Ratio{en.flexural.value - depth / en.flexural_length.value});
  const Stress f_ctk_fl = en.f_ctk.value * by_depth * f_ctm;
  trace.add([&] {
    return Step{.words = "lower tension in bending at which the piece cracks",
                .result = {"f_ctk_fl", in(MPa, f_ctk_fl), "MPa"},
                .formula = "k_05 * max(1, k_fl - h / h_0) * f_ctm",
                .given = {{"k_05", en.f_ctk.value.value(), "1"},
                          {"k_fl", en.flexural.value.value(), "1"},
                          {"h", in(mm, depth), "mm"},
                          {"h_0", in(mm, en.flexural_length.value), "mm"},
                          {"f_ctm", in(MPa, f_ctm), "MPa"}},
                .clause = "EN 1992-1-1 3.1.8 (3.23)",
                .sources = {en.f_ctk.source, en.flexural.source, en.flexural_length.source}};
  });
  return Resistance<Stress>{f_ctk_fl};
}

}  // namespace

Outcome<Resistance<Stress>> cracking_stress(const plan::Concrete& concrete, Stress strength, Length depth,
                                            const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace) {
  if (!(strength > Stress{}) || !is_finite(strength))
    return NotAssessed{"the strength of the concrete is not a usable number", {}};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{"the kind of concrete is not in the tables", "[concrete] kind = \"normalweight\""};
  const auto& lambda = kind->second.lambda_a;
  if (rules.cracking.en)
    return en_cracking_stress(concrete.kind, strength, depth, lambda.value, *rules.cracking.en, trace);
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
