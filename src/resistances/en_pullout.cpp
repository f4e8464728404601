// The head of one insert pulls through the concrete, EN 1992-4.
//
//   N_Rk,p = k2 A_h f_ck        k2 = 7.5 cracked, 10.5 uncracked; with cylinder strength
//
// Source   EN 1992-4:2018 7.2.1.5. k2 from the 6 A_h f_ck,cube of CEN/TS 1992-4, which is for cubes: 6 x 1.25, and x 1.4.

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> en_pullout(const HeadedInsert& insert, Stress f_ck, const tables::En1992HeadedModel& en,
                                      Trace& trace) {
  const Sourced<Ratio>& k2 = insert.cracked ? en.k2_cracked : en.k2_uncracked;
  const Force N_Rk_p = k2.value * insert.A_brg * f_ck;
  if (!is_usable(insert.A_brg) || !is_usable(f_ck) || !is_usable(N_Rk_p))
    return NotAssessed{
        fmt::format("the head of insert {} or the concrete strength is not a number above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("pull-out resistance of insert {}, {} concrete", insert.id,
                                     insert.cracked ? "cracked" : "uncracked"),
                .result = mm_n("N_Rk_p", N_Rk_p),
                .formula = "k2 * A_h * f_ck",
                .given = {mm_n("k2", k2.value), mm_n("A_h", insert.A_brg), mm_n("f_ck", f_ck)},
                .clause = "EN 1992-4 7.2.1.5",
                .sources = {k2.source}};
  });
  return Resistance<Force>{N_Rk_p};
}

}  // namespace firstpick::resistances
