// A cone of concrete breaks out with one insert or a group in tension, EN 1992-4.
//
//   N_Rk,c = N0_Rk,c (A_c,N / A0_c,N) psi_s,N psi_re,N psi_ec,N       A0_c,N = s_cr,N^2, s_cr,N = 2 c_cr,N, c_cr,N = 1.5 h_ef
//   N0_Rk,c = k1 sqrt(f_ck) h_ef^1.5
//   psi_s,N = 0.7 + 0.3 c / c_cr,N <= 1        psi_re,N = 0.5 + h_ef / 200 mm <= 1
//   psi_ec,N = 1 / (1 + 2 e_N / s_cr,N), both axes multiplied
//   h_ef, but in psi_re,N: that of near_edges.cpp where edges are near in three or four directions
//
// Source   EN 1992-4:2018 7.2.1.4, (7.1) to (7.6), second-hand; k1 from memory. psi_M,N = 1: an insert has no base plate.
// Choice   psi_re,N always, as if bars stood close in the cover: the plan does not tell their spacing.
// Inputs   inserts of one face with equal h_ef; insert.cracked: whoever calls has seen to cracks and splitting.

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "resistances/breakout_parts.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/near_edges.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

struct ConeFactors {
  Length reach;  // c_cr,N
  Area A_cN, A0_cN;
  Ratio psi_s, psi_re, psi_ec;
};

ConeFactors factors(const HeadedInsert& insert, const GroupLayout& layout, const Eccentricity& e, Length reach, Area A_cN,
                const tables::En1992HeadedModel& en) {
  const Length c = layout.edges.nearest;
  const Ratio near_edge = en.psi_s_base.value + en.psi_s_slope.value * (c / reach);
  return {.reach = reach,
          .A_cN = A_cN,
          .A0_cN = 4.0 * reach * reach,
          .psi_s = c >= reach ? Ratio{1.0} : near_edge,
          .psi_re = std::min(Ratio{1.0}, Ratio{en.psi_re_base.value + insert.h_ef / en.psi_re_length.value}),
          .psi_ec = 1.0 / ((1.0 + abs(e.u) / reach) * (1.0 + abs(e.v) / reach))};
}

void record(Group group, const GroupLayout& layout, const Eccentricity& e, const ConeFactors& f, Length depth,
            const tables::HeadedInsertModel& model, Trace& trace) {
  const tables::En1992HeadedModel& en = *model.en;
  trace.add([&] {
    return Step{.words = "how far the cone reaches from an insert",
                .result = mm_n("c_cr_N", f.reach),
                .formula = "k_h * h_ef",
                .given = {mm_n("k_h", model.cone_extent.value), mm_n("h_ef", depth)},
                .clause = "EN 1992-4 (7.3)",
                .sources = {model.cone_extent.source}};
  });
  trace.add([&] {
    Step step{.words = fmt::format("area of the cone of {} on the face, cut off at edges and openings",
                                   inserts_in_words(group)),
              .result = mm_n("A_cN", f.A_cN),
              .clause = "EN 1992-4 7.2.1.4"};
    if (const auto shape = area_formula(group, layout, f.reach, f.A_cN)) {
      step.formula = shape->formula;  // of ACI, whose r is another length: the reach of shear in EN
      for (std::size_t at = 0; (at = step.formula.find(", r)", at)) != std::string::npos; at += 6)
        step.formula.replace(at, 4, ", r_N)");
      step.given = {mm_n("c_1", shape->c[0]), mm_n("r_N", f.reach), mm_n("c_2", shape->c[1]),
                    mm_n("c_3", shape->c[2]), mm_n("c_4", shape->c[3])};
    }
    return step;
  });
  trace.add([&] {
    return Step{.words = "area of the cone of one insert far from edges",
                .result = mm_n("A0_cN", f.A0_cN),
                .formula = "(2 * c_cr_N)^2",
                .given = {mm_n("c_cr_N", f.reach)},
                .clause = "EN 1992-4 (7.3)"};
  });
  trace.add([&] {
    return Step{.words = "an edge near the inserts",
                .result = mm_n("psi_s", f.psi_s),
                .formula = layout.edges.nearest >= f.reach ? "1" : "b + a * c / c_cr_N",
                .given = {mm_n("b", en.psi_s_base.value), mm_n("a", en.psi_s_slope.value),
                          mm_n("c", layout.edges.nearest), mm_n("c_cr_N", f.reach)},
                .clause = "EN 1992-4 (7.4)",
                .sources = {en.psi_s_base.source, en.psi_s_slope.source}};
  });
  trace.add([&] {
    return Step{.words = "bars that may stand close in the concrete cover",
                .result = mm_n("psi_re", f.psi_re),
                .formula = "min(1, b_re + h_ef / h_re)",
                .given = {mm_n("b_re", en.psi_re_base.value), mm_n("h_ef", group.front()->h_ef),
                          mm_n("h_re", en.psi_re_length.value)},
                .clause = "EN 1992-4 (7.5)",
                .sources = {en.psi_re_base.source, en.psi_re_length.source}};
  });
  trace.add([&] {
    return Step{.words = "the resultant acts beside the centroid of the group",
                .result = mm_n("psi_ec", f.psi_ec),
                .formula = "1 / ((1 + 2 * e_u / (2 * c_cr_N)) * (1 + 2 * e_v / (2 * c_cr_N)))",
                .given = {mm_n("e_u", abs(e.u)), mm_n("c_cr_N", f.reach), mm_n("e_v", abs(e.v))},
                .clause = "EN 1992-4 (7.6)"};
  });
}

}  // namespace

Force en_basic_cone(Length h_ef, bool cracked, Stress f_ck, const tables::En1992HeadedModel& en, Trace& trace) {
  const Sourced<BreakoutCoefficient>& k1 = cracked ? en.k1_cracked : en.k1_uncracked;
  const Force N0 = k1.value * root(f_ck) * power<3, 2>(h_ef);
  trace.add([&] {
    return Step{.words = fmt::format("cone resistance of one insert, {} concrete", cracked ? "cracked" : "uncracked"),
                .result = mm_n("N0_Rk_c", N0),
                .formula = "k1 * sqrt(f_ck) * h_ef^1.5",
                .given = {mm_n("k1", k1.value), mm_n("f_ck", f_ck), mm_n("h_ef", h_ef)},
                .clause = "EN 1992-4 (7.2)",
                .sources = {k1.source}};
  });
  return N0;
}

Outcome<Resistance<Force>> en_breakout(Group group, ProjectedAreas& areas, const Eccentricity& eccentricity,
                                       Stress f_ck, const tables::HeadedInsertModel& model, Trace& trace) {
  const Outcome<GroupLayout>& placed = areas.layout(group);
  if (const auto* why = std::get_if<NotAssessed>(&placed)) return *why;
  const auto& layout = std::get<GroupLayout>(placed);
  if (auto why = outside_range(group, layout, f_ck, model)) return *std::move(why);
  if (!is_finite(eccentricity.u) || !is_finite(eccentricity.v))
    return NotAssessed{"the place of the resultant of the group is not a number", {}};

  const HeadedInsert& insert = *group.front();
  const Length depth = depth_near_edges(insert.h_ef, layout, model, trace);
  const Length reach = model.cone_extent.value * depth;
  const Outcome<Area>& area = areas.area(group, reach);
  if (const auto* why = std::get_if<NotAssessed>(&area)) return *why;

  const ConeFactors f = factors(insert, layout, eccentricity, reach, std::get<Area>(area), *model.en);
  record(group, layout, eccentricity, f, depth, model, trace);
  const bool cracked = std::ranges::any_of(group, &HeadedInsert::cracked);
  const Force N0 = en_basic_cone(depth, cracked, f_ck, *model.en, trace);
  const Force N_Rk_c = N0 * (f.A_cN / f.A0_cN) * f.psi_s * f.psi_re * f.psi_ec;
  if (!is_usable(N_Rk_c))
    return NotAssessed{fmt::format("the cone resistance about insert {} is not a number above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("cone resistance of {} in tension", inserts_in_words(group)),
                .result = mm_n("N_Rk_c", N_Rk_c),
                .formula = "N0_Rk_c * A_cN / A0_cN * psi_s * psi_re * psi_ec",
                .given = {mm_n("N0_Rk_c", N0), mm_n("A_cN", f.A_cN), mm_n("A0_cN", f.A0_cN), mm_n("psi_s", f.psi_s),
                          mm_n("psi_re", f.psi_re), mm_n("psi_ec", f.psi_ec)},
                .clause = "EN 1992-4 (7.1)"};
  });
  return Resistance<Force>{N_Rk_c};
}

}  // namespace firstpick::resistances
