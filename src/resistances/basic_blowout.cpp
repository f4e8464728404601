// Side-face blowout strength of one head near one edge, far from a corner.
//
//   N_sb = 160 c_a1 sqrt(A_brg) lambda_a sqrt(f_c)
//
// Source   ACI 318-19 17.6.4.1; the 160 (lb, in) is in the rule set.

#include "resistances/basic_blowout.hpp"

#include <fmt/format.h>

#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Force basic_blowout(Length c_a1, Area A_brg, Ratio lambda_a, Stress f_c,
                    const tables::HeadedInsertModel& model, Trace& trace) {
  const Force N_sb = model.blowout.value * c_a1 * root(A_brg) * lambda_a * root(f_c);
  trace.add([&] {
    return Step{.words = "side-face blowout strength of one head far from a corner",
                .result = lb_in("N_sb", N_sb),
                .formula = "k_sb * c_a1 * sqrt(A_brg) * lambda_a * sqrt(f_c)",
                .given = {lb_in("k_sb", model.blowout.value), lb_in("c_a1", c_a1), lb_in("A_brg", A_brg),
                          lb_in("lambda_a", lambda_a), lb_in("f_c", f_c)},
                .clause = "ACI 318-19 17.6.4.1",
                .sources = {model.blowout.source, model.blowout_depth.source}};
  });
  return N_sb;
}

bool is_described_for_blowout(const HeadedInsert& insert, Length c_a1, Stress f_c) {
  return is_usable(insert.h_ef) && is_usable(insert.A_brg) && is_usable(insert.lambda_a) && is_usable(c_a1) &&
         is_usable(f_c);
}

NotAssessed not_described_for_blowout(const HeadedInsert& insert) {
  return {fmt::format("insert {}, its edges or the concrete strength are not described by numbers above zero",
                      insert.id),
          {}};
}

}  // namespace firstpick::resistances
