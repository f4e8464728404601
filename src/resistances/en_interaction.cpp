// Tension and shear at once, EN 1992-4: the steel and the concrete each for itself, and the larger use counts.
//
//   steel      (n_s^2 + v_s^2)^(1/2)
//   concrete   min( (n_c^1.5 + v_c^1.5)^(1/1.5), max(n_c, v_c, (n_c + v_c) / 1.2) )
//
// Source   EN 1992-4:2018 table 7.3, second-hand: n^2 + v^2 <= 1 and n^1.5 + v^1.5 <= 1 or n + v <= 1.2, either of them. The
//          roots turn the sums into a use that grows as the load does and is 1 at the same limit.
//          Bars that hold the tension alone: (n_c^(2/3) + v_c^(2/3))^(3/2), and no other form.

#include <algorithm>
#include <cmath>
#include <limits>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"

namespace firstpick::resistances {

namespace {

bool is_use(Ratio number) { return is_finite(number) && number >= 0.0; }

double by_power(Ratio a, Ratio b, Ratio power) {
  const double p = power.value();
  return std::pow(std::pow(a.value(), p) + std::pow(b.value(), p), 1.0 / p);
}

}  // namespace

Ratio en_steel_interaction(Ratio tension, Ratio shear, const tables::En1992HeadedModel& en, Trace& trace) {
  if (!is_use(tension) || !is_use(shear)) return std::numeric_limits<double>::quiet_NaN();
  const Ratio use = by_power(tension, shear, en.power_steel.value);
  trace.add([&] {
    return Step{.words = "steel in tension and shear together",
                .result = mm_n("u_s", use),
                .formula = "(n_s^p_s + v_s^p_s)^(1 / p_s)",
                .given = {mm_n("n_s", tension), mm_n("p_s", en.power_steel.value), mm_n("v_s", shear)},
                .clause = "EN 1992-4 table 7.3",
                .sources = {en.power_steel.source}};
  });
  return use;
}

Ratio en_concrete_interaction(Ratio tension, Ratio shear, const tables::HeadedInsertModel& model, Trace& trace) {
  if (!is_use(tension) || !is_use(shear)) return std::numeric_limits<double>::quiet_NaN();
  const Sourced<Ratio>& p = model.en->power_concrete;
  const Sourced<Ratio>& sum = model.interaction_sum;
  const Ratio linear = std::max({tension, shear, Ratio{(tension + shear) / sum.value}});
  const Ratio use = std::min(Ratio{by_power(tension, shear, p.value)}, linear);
  trace.add([&] {
    return Step{.words = "failures of the concrete in tension and shear together, the kinder of two forms",
                .result = mm_n("u_c", use),
                .formula = "min((n_c^p_c + v_c^p_c)^(1 / p_c), max(n_c, v_c, (n_c + v_c) / k_sum))",
                .given = {mm_n("n_c", tension), mm_n("p_c", p.value), mm_n("v_c", shear), mm_n("k_sum", sum.value)},
                .clause = "EN 1992-4 table 7.3",
                .sources = {p.source, sum.source}};
  });
  return use;
}

Ratio en_interaction_beside_bars(Ratio tension, Ratio shear, const Sourced<Ratio>& power, Trace& trace) {
  if (!is_use(tension) || !is_use(shear)) return std::numeric_limits<double>::quiet_NaN();
  const Ratio use = by_power(tension, shear, power.value);
  trace.add([&] {
    return Step{.words = "concrete and bars in tension and shear together, where bars hold the tension alone",
                .result = mm_n("u_c", use),
                .formula = "(n_c^p_re + v_c^p_re)^(1 / p_re)",
                .given = {mm_n("n_c", tension), mm_n("p_re", power.value), mm_n("v_c", shear)},
                .clause = "EN 1992-4 table 7.3",
                .sources = {power.source}};
  });
  return use;
}

}  // namespace firstpick::resistances
