// Mean tensile strength of normal concrete at the lift.
//
//   f_ctm = 0.30 f_ck^(2/3)                  up to C50/60
//   f_ctm = 2.12 ln(1 + (f_ck + 8) / 10)     above; MPa
//
// Source   EN 1992-1-1 table 3.1 (quoted).
// Left out 3.1.2(9), f_ctm(t) = f_cm(t) / f_cm f_ctm before 28 days: a plan need not state the strength of 28 days, and must
//          not be better off without it. The note of "cracking.f_ctm" says how much less that is.

#include "resistances/en_mean_tension.hpp"

#include <cmath>

namespace firstpick::resistances {

namespace {

constexpr const char* mean_tension = "mean tensile strength of the concrete at this strength";
constexpr const char* mean_tension_clause = "EN 1992-1-1 table 3.1";

}  // namespace

Stress en_mean_tension(Stress f_ck, const tables::En1992Tension& en, Trace& trace) {
  const double f_ck_MPa = in(MPa, f_ck);
  if (!(f_ck > en.strong_from.value)) {
    const Stress f_ctm = en.f_ctm.value.value() * std::cbrt(f_ck_MPa * f_ck_MPa) * MPa;
    trace.add([&] {
      return Step{.words = mean_tension,
                  .result = {"f_ctm", in(MPa, f_ctm), "MPa"},
                  .formula = "k_t * f_ck^(2 / 3)",
                  .given = {{"k_t", en.f_ctm.value.value(), "MPa^(1/3)"}, {"f_ck", f_ck_MPa, "MPa"}},
                  .clause = mean_tension_clause,
                  .sources = {en.f_ctm.source}};
    });
    return f_ctm;
  }
  const double f_cm_MPa = f_ck_MPa + in(MPa, en.mean_over.value);
  const Stress f_ctm = en.f_ctm_strong.value * std::log(1.0 + f_cm_MPa / 10.0);
  trace.add([&] {
    return Step{.words = mean_tension,
                .result = {"f_ctm", in(MPa, f_ctm), "MPa"},
                .formula = "k_ln * ln(1 + (f_ck + df_cm) / 10)",
                .given = {{"k_ln", in(MPa, en.f_ctm_strong.value), "MPa"},
                          {"f_ck", f_ck_MPa, "MPa"},
                          {"df_cm", in(MPa, en.mean_over.value), "MPa"}},
                .clause = mean_tension_clause,
                .sources = {en.f_ctm_strong.source, en.strong_from.source, en.mean_over.source}};
  });
  return f_ctm;
}

}  // namespace firstpick::resistances
