// Length over which a ribbed bar comes to its yield strength, at the strength of this lift.
//
//   l_d  = max(psi_t f_y d_b / (k lambda sqrt(f_c)), 12 in)                k = 50/3 up to No. 6, else 40/3; psi, in
//   l_dh = max(psi_h psi_c f_y d_b^1.5 / (55 lambda sqrt(f_c)), 8 d_b, 6 in)
//   psi_c = 0.6 + f_c / 15000 <= 1        psi_h = psi_r psi_o = 1.6 x 1.25: no ties, no side cover
//
// Source   ACI 318-19 table 25.4.2.3, the rows "other cases"; 25.4.3.1, table 25.4.3.2: from memory.
// Range    f_y up to the cap of the rule set, so that psi_g of table 25.4.2.5 is 1. Uncoated bars.

#include "resistances/development.hpp"

#include <algorithm>

#include "resistances/lb_in_terms.hpp"

namespace firstpick::resistances {

Length straight_length(const DevelopedBar& bar, const tables::AciDevelopment& model, Trace& trace) {
  const Sourced<RootStress>& k = bar.diameter <= model.thin_up_to.value ? model.straight_thin : model.straight_thick;
  const Ratio psi_t = bar.upright ? Ratio{1.0} : model.cast_position.value;
  const Ratio over = (bar.f_y / (k.value * bar.lambda_a * root(bar.f_c)));
  const Length l_d = std::max(Length{psi_t * over * bar.diameter}, model.straight_least.value);
  trace.add([&] {
    Step step{.words = bar.upright ? "development of a straight end, upright as cast"
                                   : "development of a straight end that may lie level as cast",
              .result = lb_in("l_d", l_d),
              .formula = "max(psi_t * f_yb * d_b / (k_d * lambda_a * sqrt(f_c)), l_least)",
              .given = {lb_in("psi_t", psi_t), lb_in("f_yb", bar.f_y), lb_in("d_b", bar.diameter), lb_in("k_d", k.value),
                        lb_in("lambda_a", bar.lambda_a), lb_in("f_c", bar.f_c),
                        lb_in("l_least", model.straight_least.value)},
              .clause = "ACI 318-19 25.4.2.3",
              .sources = {k.source, model.thin_up_to.source, model.straight_least.source}};
    if (!bar.upright) step.sources.push_back(model.cast_position.source);
    return step;
  });
  return l_d;
}

Length hooked_length(const DevelopedBar& bar, const tables::AciDevelopment& model, Trace& trace) {
  const Ratio psi_c = std::min(Ratio{1.0}, Ratio{model.hook_base.value + bar.f_c / model.hook_over.value});
  const Length by_bond = model.hook_factor.value * psi_c * bar.f_y * power<3, 2>(bar.diameter) /
                         (model.hook.value * bar.lambda_a * root(bar.f_c));
  const Length l_dh =
      std::max({by_bond, Length{model.hook_diameters.value * bar.diameter}, model.hook_least.value});
  trace.add([&] {
    return Step{.words = "strength of the concrete, in the development of a hook",
                .result = lb_in("psi_cb", psi_c),
                .formula = "min(1, b_h + f_c / f_h)",
                .given = {lb_in("b_h", model.hook_base.value), lb_in("f_c", bar.f_c), lb_in("f_h", model.hook_over.value)},
                .clause = "ACI 318-19 table 25.4.3.2",
                .sources = {model.hook_base.source, model.hook_over.source}};
  });
  trace.add([&] {
    return Step{.words = "development of a hook",
                .result = lb_in("l_dh", l_dh),
                .formula = "max(psi_hook * psi_cb * f_yb * d_b^1.5 / (k_hook * lambda_a * sqrt(f_c)), n_hook * d_b, l_hook)",
                .given = {lb_in("psi_hook", model.hook_factor.value), lb_in("psi_cb", psi_c), lb_in("f_yb", bar.f_y),
                          lb_in("d_b", bar.diameter), lb_in("k_hook", model.hook.value), lb_in("lambda_a", bar.lambda_a),
                          lb_in("f_c", bar.f_c), lb_in("n_hook", model.hook_diameters.value),
                          lb_in("l_hook", model.hook_least.value)},
                .clause = "ACI 318-19 25.4.3.1",
                .sources = {model.hook.source, model.hook_factor.source, model.hook_diameters.source,
                            model.hook_least.source}};
  });
  return l_dh;
}

}  // namespace firstpick::resistances
