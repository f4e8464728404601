// Partial factors of resistances, EN 1992-4.
//
//   concrete          gamma_Mc = gamma_c gamma_inst
//   steel, tension    gamma_Ms = 1.2 f_uk / f_yk >= 1.4
//   steel, shear      gamma_Ms = 1.0 f_uk / f_yk >= 1.25 where f_uk <= 800 MPa and f_yk / f_uk <= 0.8, else 1.5
//
// Source   EN 1992-4:2018 table 4.1, recommended values, permanent and transient; second-hand. A national annex may differ:
//          the Danish one of 2024, as quoted, has other values.

#include <algorithm>

#include <fmt/format.h>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"

namespace firstpick::resistances {

namespace {

constexpr const char* table = "EN 1992-4 table 4.1";

PartialFactor recorded(PartialFactor factor, std::string words, std::string formula, std::vector<Term> given,
                       Trace& trace) {
  trace.add([&] {
    return Step{.words = std::move(words),
                .result = mm_n(factor.symbol, factor.value),
                .formula = std::move(formula),
                .given = std::move(given),
                .clause = factor.clause,
                .sources = factor.sources};
  });
  return factor;
}

}  // namespace

PartialFactor partial_factor_of_concrete(const tables::En1992HeadedModel& en, Trace& trace) {
  return recorded({en.gamma_c.value * en.gamma_inst.value, "gamma_Mc", table, {en.gamma_c.source, en.gamma_inst.source}},
                  "partial factor of failures of the concrete", "gamma_c * gamma_inst",
                  {mm_n("gamma_c", en.gamma_c.value), mm_n("gamma_inst", en.gamma_inst.value)}, trace);
}

PartialFactor partial_factor_of_steel_tension(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                              Trace& trace) {
  const Ratio gamma = std::max(en.gamma_s_tension_least.value,
                               Ratio{en.gamma_s_tension.value * (insert.f_uta / insert.f_ya)});
  return recorded({gamma, "gamma_Ms", table, {en.gamma_s_tension.source, en.gamma_s_tension_least.source}},
                  fmt::format("partial factor of the steel of insert {} in tension", insert.id),
                  "max(a * f_uk / f_yk, least)",
                  {mm_n("a", en.gamma_s_tension.value), mm_n("f_uk", insert.f_uta), mm_n("f_yk", insert.f_ya),
                   mm_n("least", en.gamma_s_tension_least.value)},
                  trace);
}

PartialFactor partial_factor_of_steel_shear(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                            Trace& trace) {
  const std::string words = fmt::format("partial factor of the steel of insert {} in shear", insert.id);
  const bool is_soft = insert.f_uta <= en.gamma_s_soft_f_uk.value &&
                       insert.f_ya <= en.gamma_s_soft_yield.value * insert.f_uta;
  if (!is_soft)
    return recorded({en.gamma_s_shear_hard.value, "gamma_Ms", table,
                     {en.gamma_s_shear_hard.source, en.gamma_s_soft_f_uk.source, en.gamma_s_soft_yield.source}},
                    words, "hard", {mm_n("hard", en.gamma_s_shear_hard.value)}, trace);
  const Ratio gamma =
      std::max(en.gamma_s_shear_least.value, Ratio{en.gamma_s_shear.value * (insert.f_uta / insert.f_ya)});
  return recorded({gamma, "gamma_Ms", table, {en.gamma_s_shear.source, en.gamma_s_shear_least.source}}, words,
                  "max(a * f_uk / f_yk, least)",
                  {mm_n("a", en.gamma_s_shear.value), mm_n("f_uk", insert.f_uta), mm_n("f_yk", insert.f_ya),
                   mm_n("least", en.gamma_s_shear_least.value)},
                  trace);
}

}  // namespace firstpick::resistances
