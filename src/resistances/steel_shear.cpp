// Steel strength of one insert in shear.
//
//   V_sa = k A_se f_uta       k = 0.6 for a bolt, 1.0 for a welded headed stud
//
// Source   ACI 318-19 17.7.1.2; k in the rule set.

#include "resistances/steel_shear.hpp"

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> steel_shear(const HeadedInsert& insert, const tables::HeadedInsertModel& model,
                                       Trace& trace) {
  if (model.en) return en_steel_shear(insert, *model.en, trace);
  const Sourced<Ratio>& k = insert.stud ? model.shear_stud : model.shear_bolt;
  const Force V_sa = k.value * insert.A_se * insert.f_uta;
  if (!is_usable(insert.A_se) || !is_usable(insert.f_uta) || !is_usable(V_sa))
    return NotAssessed{
        fmt::format("the steel of insert {} is not described by numbers above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("steel strength of insert {} in shear, {}", insert.id,
                                     insert.stud ? "welded headed stud" : "headed bolt"),
                .result = lb_in("V_sa", V_sa),
                .formula = "k_sa * A_se * f_uta",
                .given = {lb_in("k_sa", k.value), lb_in("A_se", insert.A_se), lb_in("f_uta", insert.f_uta)},
                .clause = insert.stud ? "ACI 318-19 17.7.1.2(a)" : "ACI 318-19 17.7.1.2(b)",
                .sources = {k.source}};
  });
  return Resistance<Force>{V_sa};
}

}  // namespace firstpick::resistances
