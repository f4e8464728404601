// The head of one insert pulls through the concrete: the pressure under it is limited.
//
//   N_pn = psi_cP N_p,   N_p = 8 A_brg f_c       psi_cP = 1.0 cracked, 1.4 uncracked
//
// Source   ACI 318-19 17.6.3.1, 17.6.3.2.2(a), 17.6.3.3; the factors are in the rule set.
// f_c      the strength for the formulas, in proportion and not under the root.

#include "resistances/pullout.hpp"

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> pullout(const HeadedInsert& insert, Stress f_c,
                                   const tables::HeadedInsertModel& model, Trace& trace) {
  if (model.en) return en_pullout(insert, f_c, *model.en, trace);
  const Sourced<Ratio>& psi_cP = insert.cracked ? model.psi_cP_cracked : model.psi_cP_uncracked;
  const Force N_p = model.pullout.value * insert.A_brg * f_c;
  const Force N_pn = psi_cP.value * N_p;
  if (!is_usable(insert.A_brg) || !is_usable(f_c) || !is_usable(N_pn))
    return NotAssessed{
        fmt::format("the head of insert {} or the concrete strength is not a number above zero", insert.id),
        {}};
  trace.add([&] {
    return Step{.words = fmt::format("pressure under the head of insert {}", insert.id),
                .result = lb_in("N_p", N_p),
                .formula = "k_p * A_brg * f_c",
                .given = {lb_in("k_p", model.pullout.value), lb_in("A_brg", insert.A_brg), lb_in("f_c", f_c)},
                .clause = "ACI 318-19 17.6.3.2.2(a)",
                .sources = {model.pullout.source}};
  });
  trace.add([&] {
    return Step{.words = fmt::format("pullout strength of insert {}, {} concrete", insert.id,
                                     insert.cracked ? "cracked" : "uncracked"),
                .result = lb_in("N_pn", N_pn),
                .formula = "psi_cP * N_p",
                .given = {lb_in("psi_cP", psi_cP.value), lb_in("N_p", N_p)},
                .clause = "ACI 318-19 17.6.3.1",
                .sources = {psi_cP.source}};
  });
  return Resistance<Force>{N_pn};
}

}  // namespace firstpick::resistances
