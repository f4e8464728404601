// Shear turns the insert and pries a body of concrete out behind it, EN 1992-4.
//
//   V_Rk,cp = k8 N_Rk,c         k8 = 1 where h_ef < 60 mm, else 2
//
// Source   EN 1992-4:2018 7.2.2.4 (7.39a); k8 from memory. No supplementary bars are counted.

#include <algorithm>

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> en_pryout(Group group, Force N_Rk_c, const tables::En1992HeadedModel& en, Trace& trace) {
  Length h_ef = group.front()->h_ef;
  for (const HeadedInsert* insert : group) h_ef = std::min(h_ef, insert->h_ef);
  const Sourced<Ratio>& k8 = h_ef >= en.k8_from.value ? en.k8_deep : en.k8_shallow;
  const Force V_Rk_cp = k8.value * N_Rk_c;
  if (!is_usable(V_Rk_cp))
    return NotAssessed{
        fmt::format("the pry-out resistance about insert {} is not a number above zero", group.front()->id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("pry-out resistance of {} insert{}, with {}", group.size(),
                                     group.size() == 1 ? "" : "s", group.front()->id),
                .result = mm_n("V_Rk_cp", V_Rk_cp),
                .formula = "k8 * N_Rk_c",
                .given = {mm_n("k8", k8.value), mm_n("N_Rk_c", N_Rk_c)},
                .clause = "EN 1992-4 (7.39a)",
                .sources = {k8.source, en.k8_from.source}};
  });
  return Resistance<Force>{V_Rk_cp};
}

}  // namespace firstpick::resistances
