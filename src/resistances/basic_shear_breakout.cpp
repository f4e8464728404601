// Breakout strength in shear of one insert towards one edge, in deep concrete far from corners.
//
//   V_b = min(7 (l_e / d_a)^0.2 sqrt(d_a), 9) lambda_a sqrt(f_c) c_a1^1.5        l_e = min(h_ef, 8 d_a)
//
// Source   ACI 318-19 17.7.2.2.1, the lesser of (a) and (b); 7, 9 (lb, in) and 8 are in the rule set.

#include "resistances/basic_shear_breakout.hpp"

#include <algorithm>
#include <cmath>

#include "resistances/lb_in_terms.hpp"

namespace firstpick::resistances {

Force basic_shear_breakout(Length c_a1, Length h_ef, Length d_a, Ratio lambda_a, Stress f_c,
                           const tables::HeadedInsertModel& model, Trace& trace) {
  const Length l_e = std::min(h_ef, Length{model.bearing_length.value * d_a});
  const double slenderness = std::pow(l_e / d_a, 0.2);
  const BreakoutCoefficient k = std::min(
      BreakoutCoefficient{model.shear_small.value * slenderness * root(d_a)}, model.shear_large.value);
  const Force V_b = k * lambda_a * root(f_c) * power<3, 2>(c_a1);
  trace.add([&] {
    return Step{
        .words = "basic breakout strength of one insert in shear, the lesser of two forms",
        .result = lb_in("V_b", V_b),
        .formula =
            "min(k_1 * (min(h_ef, k_e * d_a) / d_a)^0.2 * sqrt(d_a), k_2) * lambda_a * sqrt(f_c) * c_a1^1.5",
        .given = {lb_in("k_1", model.shear_small.value), lb_in("h_ef", h_ef),
                  lb_in("k_e", model.bearing_length.value), lb_in("d_a", d_a),
                  lb_in("k_2", model.shear_large.value), lb_in("lambda_a", lambda_a), lb_in("f_c", f_c),
                  lb_in("c_a1", c_a1)},
        .clause = "ACI 318-19 17.7.2.2.1",
        .sources = {model.shear_small.source, model.shear_large.source, model.bearing_length.source}};
  });
  return V_b;
}

}  // namespace firstpick::resistances
