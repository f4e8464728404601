// Steel strength of one insert in tension.
//
//   N_sa = A_se f_uta
//
// Source   ACI 318-19 17.6.1.2. f_uta is already limited to 1.9 fya and 125 ksi (headed_insert).
// Inputs   steel area of the shank, behind the thread where there is one.

#include "resistances/steel_tension.hpp"

#include <fmt/format.h>

#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> steel_tension(const HeadedInsert& insert, Trace& trace) {
  const Force N_sa = insert.A_se * insert.f_uta;
  if (!is_usable(insert.A_se) || !is_usable(insert.f_uta) || !is_usable(N_sa))
    return NotAssessed{
        fmt::format("the steel of insert {} is not described by numbers above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("steel strength of insert {} in tension", insert.id),
                .result = lb_in("N_sa", N_sa),
                .formula = "A_se * f_uta",
                .given = {lb_in("A_se", insert.A_se), lb_in("f_uta", insert.f_uta)},
                .clause = "ACI 318-19 17.6.1.2",
                .sources = {}};
  });
  return Resistance<Force>{N_sa};
}

}  // namespace firstpick::resistances
