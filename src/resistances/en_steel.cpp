// The steel of one insert breaks in tension or shears off, EN 1992-4.
//
//   N_Rk,s = A_s f_uk
//   V_Rk,s = k7 k6 A_s f_uk          k6 = 0.6 where f_uk <= 500 MPa, 0.5 up to 1000 MPa; x 0.8 where h_ef / d < 5
//
// Source   EN 1992-4:2018 7.2.1.3, 7.2.2.3 (7.34), second-hand. f_uk is not limited here (headed_insert.cpp).
// Choice   k7 = 0.8, of steel whose elongation nobody states. The 0.8 of short shanks always: the standard spares concrete
//          of C20/25 and above, and a first lift is in weaker concrete. Shear with a lever arm (7.37): the clutch of a
//          lifting insert bears on the concrete, none is counted.

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

NotAssessed not_described(const HeadedInsert& insert) {
  return {fmt::format("the steel of insert {} is not described by numbers above zero", insert.id), {}};
}

}  // namespace

Outcome<Resistance<Force>> en_steel_tension(const HeadedInsert& insert, Trace& trace) {
  const Force N_Rk_s = insert.A_se * insert.f_uta;
  if (!is_usable(insert.A_se) || !is_usable(insert.f_uta) || !is_usable(N_Rk_s)) return not_described(insert);
  trace.add([&] {
    return Step{.words = fmt::format("steel resistance of insert {} in tension", insert.id),
                .result = mm_n("N_Rk_s", N_Rk_s),
                .formula = "A_s * f_uk",
                .given = {mm_n("A_s", insert.A_se), mm_n("f_uk", insert.f_uta)},
                .clause = "EN 1992-4 7.2.1.3"};
  });
  return Resistance<Force>{N_Rk_s};
}

Outcome<Resistance<Force>> en_steel_shear(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                          Trace& trace) {
  if (!is_usable(insert.A_se) || !is_usable(insert.f_uta) || !is_usable(insert.h_ef) || !is_usable(insert.d_a))
    return not_described(insert);
  if (!(insert.f_uta <= en.f_uk_most.value))
    return NotAssessed{fmt::format("the steel of insert {} is stronger than the formula of shear covers", insert.id),
                       "a steel within the range of EN 1992-4 (7.34)"};
  const Sourced<Ratio>& k6 = insert.f_uta <= en.f_uk_soft.value ? en.k6_soft : en.k6_hard;
  const bool is_short = insert.h_ef < en.short_below.value * insert.d_a;
  const Ratio k_short = is_short ? en.short_shank.value : Ratio{1.0};
  const Force V_Rk_s = en.k7.value * k_short * k6.value * insert.A_se * insert.f_uta;
  if (!is_usable(V_Rk_s)) return not_described(insert);
  trace.add([&] {
    return Step{.words = fmt::format("steel resistance of insert {} in shear{}", insert.id,
                                     is_short ? ", a short shank" : ""),
                .result = mm_n("V_Rk_s", V_Rk_s),
                .formula = "k7 * k_short * k6 * A_s * f_uk",
                .given = {mm_n("k7", en.k7.value), mm_n("k_short", k_short), mm_n("k6", k6.value),
                          mm_n("A_s", insert.A_se), mm_n("f_uk", insert.f_uta)},
                .clause = "EN 1992-4 (7.34)",
                .sources = {en.k7.source, en.short_shank.source, en.short_below.source, k6.source, en.f_uk_soft.source,
                            en.f_uk_most.source}};
  });
  return Resistance<Force>{V_Rk_s};
}

}  // namespace firstpick::resistances
