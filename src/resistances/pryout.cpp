// Shear turns the insert and pries a body of concrete out behind it.
//
//   V_cp = k_cp N_cb          k_cp = 1 where h_ef < 2.5 in, else 2
//
// Source   ACI 318-19 17.7.3.1, for cast-in inserts; k_cp in the rule set.
// Inputs   N_cb, N_cbg: breakout strength in tension of the inserts that share the shear, with the
//          eccentricity of the shear.

#include "resistances/pryout.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> pryout(Group group, const Outcome<Resistance<Force>>& breakout,
                                  const tables::HeadedInsertModel& model, Trace& trace) {
  if (group.empty()) return NotAssessed{"a group without inserts", {}};
  if (const auto* why = std::get_if<NotAssessed>(&breakout)) return *why;
  const Force N_cb = std::get<Resistance<Force>>(breakout).value;
  Length h_ef = group.front()->h_ef;
  for (const HeadedInsert* insert : group) {
    if (!is_usable(insert->h_ef))
      return NotAssessed{fmt::format("the embedment of insert {} is not a number above zero", insert->id),
                         {}};
    h_ef = std::min(h_ef, insert->h_ef);
  }
  if (model.en) return en_pryout(group, N_cb, *model.en, trace);

  const Sourced<Ratio>& k_cp = h_ef >= model.pryout_depth.value ? model.pryout_deep : model.pryout_shallow;
  const Force V_cp = k_cp.value * N_cb;
  if (!is_usable(V_cp))
    return NotAssessed{
        fmt::format("the pryout strength about insert {} is not a number above zero", group.front()->id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("pryout strength of {} insert{}, with {}", group.size(),
                                     group.size() == 1 ? "" : "s", group.front()->id),
                .result = lb_in("V_cp", V_cp),
                .formula = "k_cp * N_cb",
                .given = {lb_in("k_cp", k_cp.value), lb_in("N_cb", N_cb)},
                .clause = group.size() == 1 ? "ACI 318-19 17.7.3.1(a)" : "ACI 318-19 17.7.3.1(b)",
                .sources = {k_cp.source, model.pryout_depth.source}};
  });
  return Resistance<Force>{V_cp};
}

}  // namespace firstpick::resistances
