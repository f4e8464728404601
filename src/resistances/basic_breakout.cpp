// Breakout strength in tension of one headed insert in cracked concrete, far from edges and other inserts.
//
//   N_b = k_c lambda_a sqrt(f_c) h_ef^1.5           k_c = 24 in lb and in
//   N_b = 16 lambda_a sqrt(f_c) h_ef^(5/3)          allowed instead for 11 in <= h_ef <= 25 in
//
// Source   ACI 318-19 17.6.2.2.1, 17.6.2.2.3.
// Choice   The standard leaves the second form to the designer. Above 11.4 in it gives more than the first
//          (8 % at 18 in), below it less. Nobody chose it here, so the lesser of the two is used.

#include "resistances/basic_breakout.hpp"

#include <algorithm>

#include "resistances/lb_in_terms.hpp"

namespace firstpick::resistances {

Force basic_breakout_root(Length h_ef, Ratio lambda_a, Stress f_c, const tables::HeadedInsertModel& model) {
  return model.k_c.value * lambda_a * root(f_c) * power<3, 2>(h_ef);
}

Force basic_breakout_deep(Length h_ef, Ratio lambda_a, Stress f_c, const tables::HeadedInsertModel& model) {
  return model.k_deep.value * lambda_a * root(f_c) * power<5, 3>(h_ef);
}

Force basic_breakout(Length h_ef, Ratio lambda_a, Stress f_c, const tables::HeadedInsertModel& model,
                     Trace& trace) {
  const Force N_b_root = basic_breakout_root(h_ef, lambda_a, f_c, model);
  if (!(h_ef >= model.deep_from.value && h_ef <= model.deep_to.value)) {
    trace.add([&] {
      return Step{.words = "basic breakout strength of one insert",
                  .result = lb_in("N_b", N_b_root),
                  .formula = "k_c * lambda_a * sqrt(f_c) * h_ef^1.5",
                  .given = {lb_in("k_c", model.k_c.value), lb_in("lambda_a", lambda_a), lb_in("f_c", f_c),
                            lb_in("h_ef", h_ef)},
                  .clause = "ACI 318-19 17.6.2.2.1",
                  .sources = {model.k_c.source}};
    });
    return N_b_root;
  }
  const Force N_b = std::min(N_b_root, basic_breakout_deep(h_ef, lambda_a, f_c, model));
  trace.add([&] {
    return Step{
        .words = "basic breakout strength of one deep insert, the lesser of the two forms",
        .result = lb_in("N_b", N_b),
        .formula = "lambda_a * sqrt(f_c) * min(k_c * h_ef^1.5, k_deep * h_ef^(5 / 3))",
        .given = {lb_in("lambda_a", lambda_a), lb_in("f_c", f_c), lb_in("k_c", model.k_c.value),
                  lb_in("h_ef", h_ef), lb_in("k_deep", model.k_deep.value)},
        .clause = "ACI 318-19 17.6.2.2.1, 17.6.2.2.3",
        .sources = {model.k_c.source, model.k_deep.source, model.deep_from.source, model.deep_to.source}};
  });
  return N_b;
}

}  // namespace firstpick::resistances
