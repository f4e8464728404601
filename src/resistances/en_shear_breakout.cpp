// A body of concrete breaks off towards an edge, in front of one insert or a row, EN 1992-4.
//
//   V_Rk,c = V0_Rk,c (A_c,V / A0_c,V) psi_s,V psi_h,V psi_ec,V            towards the edge
//   along the edge: V_Rk,c times psi_alpha,V at 90 degrees, 1 / 0.5
//   V0_Rk,c = k9 d^alpha l_f^beta sqrt(f_ck) c_1^1.5     alpha = 0.1 (l_f / c_1)^0.5, beta = 0.1 (d / c_1)^0.2; N, mm, MPa
//   l_f = min(h_ef, 12 d) where d <= 24 mm, else min(h_ef, max(8 d, 300 mm))
//   A0_c,V = 4.5 c_1^2    psi_s,V = 0.7 + 0.3 c_2 / (1.5 c_1) <= 1    psi_h,V = (1.5 c_1 / h)^0.5 >= 1
//   psi_ec,V = 1 / (1 + 2 e_V / (3 c_1));   c_1 everywhere: narrow_section.cpp in a narrow and thin section
//
// Source   EN 1992-4:2018 7.2.2.5, (7.40) to (7.48), second-hand. psi_re,V = 1: sources disagree on it.
// Between towards and along: psi_alpha,V = 1 / sqrt(cos^2 + (0.5 sin)^2) is the ellipse of shear_parts.cpp. The waiver far
// from edges (c > 10 h_ef or 60 d) is not used.

#include <algorithm>
#include <cmath>

#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/narrow_section.hpp"

namespace firstpick::resistances {

namespace {

struct Basic {
  Length l_f;
  double alpha, beta;
  Force V0;
};

Basic basic(const ShearEdge& edge, Length c_1, Stress f_ck, const Sourced<Ratio>& k9,
            const tables::En1992HeadedModel& en) {
  const bool is_thick = edge.d_a > en.thick_shank.value;
  const Length most = is_thick ? std::max(Length{en.l_f_thick.value * edge.d_a}, en.l_f_thick_least.value)
                               : Length{en.l_f_slender.value * edge.d_a};
  const Length l_f = std::min(edge.h_ef, most);
  const double alpha = 0.1 * std::sqrt(l_f / c_1), beta = 0.1 * std::pow(edge.d_a / c_1, 0.2);
  const double d_mm = in(mm, edge.d_a), l_f_mm = in(mm, l_f), c_1_mm = in(mm, c_1), f_ck_MPa = in(MPa, f_ck);
  const Force V0 = k9.value.value() * std::pow(d_mm, alpha) * std::pow(l_f_mm, beta) * std::sqrt(f_ck_MPa) * c_1_mm *
                   std::sqrt(c_1_mm) * newton;
  return {l_f, alpha, beta, V0};
}

void record(const ShearEdge& edge, const Basic& b, Length c_1, Stress f_ck, const Sourced<Ratio>& k9,
            const tables::En1992HeadedModel& en, Trace& trace) {
  trace.add([&] {
    const bool is_thick = edge.d_a > en.thick_shank.value;
    return Step{.words = "length of the shank that bears on the concrete",
                .result = mm_n("l_f", b.l_f),
                .formula = is_thick ? "min(h_ef, max(k_l * d, l_least))" : "min(h_ef, k_l * d)",
                .given = {mm_n("h_ef", edge.h_ef), mm_n("k_l", is_thick ? en.l_f_thick.value : en.l_f_slender.value),
                          mm_n("d", edge.d_a), mm_n("l_least", en.l_f_thick_least.value)},
                .clause = "EN 1992-4 7.2.2.5",
                .sources = {en.l_f_slender.source, en.thick_shank.source, en.l_f_thick.source,
                            en.l_f_thick_least.source}};
  });
  trace.add([&] {
    return Step{.words = "exponent of the shank diameter",
                .result = {"alpha", b.alpha, "1"},
                .formula = "0.1 * sqrt(l_f / c_1)",
                .given = {mm_n("l_f", b.l_f), mm_n("c_1", c_1)},
                .clause = "EN 1992-4 (7.42)"};
  });
  trace.add([&] {
    return Step{.words = "exponent of the bearing length",
                .result = {"beta", b.beta, "1"},
                .formula = "0.1 * (d / c_1)^0.2",
                .given = {mm_n("d", edge.d_a), mm_n("c_1", c_1)},
                .clause = "EN 1992-4 (7.43)"};
  });
  trace.add([&] {
    return Step{.words = "edge resistance of one insert in deep concrete, far from corners",
                .result = mm_n("V0_Rk_c", b.V0),
                .formula = "k9 * d^alpha * l_f^beta * sqrt(f_ck) * c_1^1.5",
                .given = {mm_n("k9", k9.value), mm_n("d", edge.d_a), {"alpha", b.alpha, "1"}, mm_n("l_f", b.l_f),
                          {"beta", b.beta, "1"}, mm_n("f_ck", f_ck), mm_n("c_1", c_1)},
                .clause = "EN 1992-4 (7.41)",
                .sources = {k9.source}};
  });
}

}  // namespace

EdgeStrength en_shear_breakout(const ShearEdge& edge, Stress f_ck, const tables::HeadedInsertModel& model,
                               Trace& trace) {
  const tables::En1992HeadedModel& en = *model.en;
  const Length c_1 = edge_distance_in_section(edge, model, trace);
  const Sourced<Ratio>& k9 = edge.cracked ? en.k9_cracked : en.k9_uncracked;
  const Basic b = basic(edge, c_1, f_ck, k9, en);
  record(edge, b, c_1, f_ck, k9, en, trace);

  const Length reach = model.shear_extent.value * c_1;
  const Length c_2 = std::min(edge.c_a2[0], edge.c_a2[1]);
  const Area A_cV = (std::min(reach, edge.c_a2[0]) + edge.s + std::min(reach, edge.c_a2[1])) *
                    std::min(reach, edge.h_a);
  const Area A0_cV = 2.0 * reach * reach;
  const Ratio psi_s =
      c_2 >= reach ? Ratio{1.0} : Ratio{en.psi_s_base.value + en.psi_s_slope.value * (c_2 / reach)};
  const Ratio psi_h = edge.h_a >= reach ? Ratio{1.0} : root(reach / edge.h_a);
  const Ratio psi_ec = 1.0 / (1.0 + edge.eccentricity / reach);
  const Force V_Rk_c = b.V0 * (A_cV / A0_cV) * psi_s * psi_h * psi_ec;
  const EdgeStrength strength{V_Rk_c, model.parallel_shear.value * V_Rk_c};

  trace.add([&] {
    return Step{.words = "how far the body reaches sideways and down",
                .result = mm_n("r", reach),
                .formula = "k_h * c_1",
                .given = {mm_n("k_h", model.shear_extent.value), mm_n("c_1", c_1)},
                .clause = "EN 1992-4 (7.44)",
                .sources = {model.shear_extent.source}};
  });
  trace.add([&] {
    return Step{.words = "area of the body on the side of the edge",
                .result = mm_n("A_cV", A_cV),
                .formula = "(min(r, c_2_left) + s + min(r, c_2_right)) * min(r, h)",
                .given = {mm_n("r", reach), mm_n("c_2_left", edge.c_a2[0]), mm_n("s", edge.s),
                          mm_n("c_2_right", edge.c_a2[1]), mm_n("h", edge.h_a)},
                .clause = "EN 1992-4 7.2.2.5"};
  });
  trace.add([&] {
    return Step{.words = "a corner near the insert",
                .result = mm_n("psi_s", psi_s),
                .formula = c_2 >= reach ? "1" : "b + a * c_2 / r",
                .given = {mm_n("b", en.psi_s_base.value), mm_n("a", en.psi_s_slope.value), mm_n("c_2", c_2),
                          mm_n("r", reach)},
                .clause = "EN 1992-4 (7.45)",
                .sources = {en.psi_s_base.source, en.psi_s_slope.source}};
  });
  trace.add([&] {
    return Step{.words = "edge resistance against a shear towards the edge",
                .result = mm_n("V_Rk_c", V_Rk_c),
                .formula = "V0_Rk_c * A_cV / (2 * r^2) * psi_s * sqrt(max(r / h, 1)) / (1 + e_V / r)",
                .given = {mm_n("V0_Rk_c", b.V0), mm_n("A_cV", A_cV), mm_n("r", reach), mm_n("psi_s", psi_s),
                          mm_n("h", edge.h_a), mm_n("e_V", edge.eccentricity)},
                .clause = "EN 1992-4 (7.40)"};
  });
  trace.add([&] {
    return Step{.words = "edge resistance against a shear along the edge",
                .result = mm_n("V_Rk_c_par", strength.along),
                .formula = "k_par * V_Rk_c",
                .given = {mm_n("k_par", model.parallel_shear.value), mm_n("V_Rk_c", V_Rk_c)},
                .clause = "EN 1992-4 (7.48)",
                .sources = {model.parallel_shear.source}};
  });
  return strength;
}

}  // namespace firstpick::resistances
