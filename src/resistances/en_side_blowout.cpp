// The concrete beside a deep head near an edge blows out, EN 1992-4: one insert, or a row along the edge.
//
//   N_Rk,cb = N0_Rk,cb (A_c,Nb / A0_c,Nb) psi_s,Nb psi_g,Nb psi_ec,Nb        A0_c,Nb = (4 c_1)^2
//   N0_Rk,cb = k5 c_1 sqrt(A_h) sqrt(f_ck)
//   psi_s,Nb = 0.7 + 0.3 c_2 / (2 c_1) <= 1      psi_g,Nb = sqrt(n) + (1 - sqrt(n)) s_2 / (4 c_1) >= 1
//   psi_ec,Nb = 1 / (1 + 2 e_N / (4 c_1))
//
// Source   EN 1992-4:2018 7.2.1.8, (7.28) to (7.30), second-hand; k5 from memory.
// Occurs   where c_1 <= 0.5 h_ef and not otherwise. Of one insert every such edge is looked at.
// A_c,Nb   on the side face, 2 c_1 to each side of the head, cut off at corners and below the concrete. Above the head there
//          are always 2 c_1 of concrete where it occurs.
// Inputs   of a row the least c_1, A_h and thickness below the head, the largest s_2; a gap counts to 4 c_1 at most.

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "resistances/basic_blowout.hpp"
#include "resistances/edge_distance.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/row_spacing.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

using Strength = Outcome<std::optional<Resistance<Force>>>;

struct Side {
  Length c_1;
  std::array<Length, 2> c_2;
  Length below;  // concrete below the head
  Area A_h;
  bool cracked;
  double n = 1.0;
  Length s{}, s_2{}, e{};  // of a row: between the outer ones, largest, of the resultant
};

Force resistance(const std::string& who, const Direction& towards, const Side& side, Stress f_ck,
                 const tables::HeadedInsertModel& model, Trace& trace) {
  const tables::En1992HeadedModel& en = *model.en;
  const Sourced<RootStress>& k5 = side.cracked ? en.k5_cracked : en.k5_uncracked;
  const Length reach = 0.5 * model.blowout_group.value * side.c_1;  // 2 c_1
  const Length c_2 = std::min(side.c_2[0], side.c_2[1]);
  const Force N0 = k5.value * side.c_1 * root(side.A_h) * root(f_ck);
  const Area A = (std::min(reach, side.c_2[0]) + side.s + std::min(reach, side.c_2[1])) *
                 (reach + std::min(reach, side.below));
  const Ratio psi_s = std::min(Ratio{1.0}, Ratio{en.psi_s_base.value + en.psi_s_slope.value * (c_2 / reach)});
  const double root_n = std::sqrt(side.n);
  const Ratio psi_g = std::max(1.0, root_n + (1.0 - root_n) * double{side.s_2 / (2.0 * reach)});
  const Ratio psi_ec = 1.0 / (1.0 + side.e / reach);
  const Force N = N0 * (A / (4.0 * reach * reach)) * psi_s * psi_g * psi_ec;
  trace.add([&] {
    return Step{.words = fmt::format("blow-out resistance of one head far from corners, {} concrete",
                                     side.cracked ? "cracked" : "uncracked"),
                .result = mm_n("N0_Rk_cb", N0),
                .formula = "k5 * c_1 * sqrt(A_h) * sqrt(f_ck)",
                .given = {mm_n("k5", k5.value), mm_n("c_1", side.c_1), mm_n("A_h", side.A_h), mm_n("f_ck", f_ck)},
                .clause = "EN 1992-4 7.2.1.8",
                .sources = {k5.source, model.blowout_depth.source}};
  });
  trace.add([&] {
    return Step{.words = "how far the body reaches from the head on the side face",
                .result = mm_n("r_b", reach),
                .formula = "0.5 * k_s * c_1",
                .given = {mm_n("k_s", model.blowout_group.value), mm_n("c_1", side.c_1)},
                .clause = "EN 1992-4 7.2.1.8",
                .sources = {model.blowout_group.source}};
  });
  trace.add([&] {
    return Step{.words = "area of the body on the side face, cut off at corners and below the concrete",
                .result = mm_n("A_cNb", A),
                .formula = "(min(r_b, c_2_left) + s + min(r_b, c_2_right)) * (r_b + min(r_b, f))",
                .given = {mm_n("r_b", reach), mm_n("c_2_left", side.c_2[0]), mm_n("s", side.s),
                          mm_n("c_2_right", side.c_2[1]), mm_n("f", side.below)},
                .clause = "EN 1992-4 7.2.1.8"};
  });
  trace.add([&] {
    return Step{.words = "a corner near the head",
                .result = mm_n("psi_s", psi_s),
                .formula = "min(1, b + a * c_2 / r_b)",
                .given = {mm_n("b", en.psi_s_base.value), mm_n("a", en.psi_s_slope.value), mm_n("c_2", c_2),
                          mm_n("r_b", reach)},
                .clause = "EN 1992-4 (7.28)",
                .sources = {en.psi_s_base.source, en.psi_s_slope.source}};
  });
  trace.add([&] {
    return Step{.words = "heads of a row that share the body",
                .result = mm_n("psi_g", psi_g),
                .formula = "max(1, sqrt(n) + (1 - sqrt(n)) * s_2 / (2 * r_b))",
                .given = {{"n", side.n, "1"}, mm_n("s_2", side.s_2), mm_n("r_b", reach)},
                .clause = "EN 1992-4 (7.29)"};
  });
  trace.add([&] {
    return Step{.words = fmt::format("blow-out resistance of {}, edge towards {}", who, direction_in_words(towards)),
                .result = mm_n("N_Rk_cb", N),
                .formula = "N0_Rk_cb * A_cNb / (2 * r_b)^2 * psi_s * psi_g / (1 + e_N / r_b)",
                .given = {mm_n("N0_Rk_cb", N0), mm_n("A_cNb", A), mm_n("r_b", reach), mm_n("psi_s", psi_s),
                          mm_n("psi_g", psi_g), mm_n("e_N", side.e)},
                .clause = "EN 1992-4 7.2.1.8, (7.30)"};
  });
  return N;
}

bool occurs(Length h_ef, Length c_1, const tables::HeadedInsertModel& model) {
  return h_ef >= model.blowout_depth.value * c_1;
}

}  // namespace

Strength en_side_blowout(const HeadedInsert& insert, Stress f_ck, const tables::HeadedInsertModel& model,
                         Trace& trace) {
  const auto& c = insert.edges.c;
  if (!std::ranges::all_of(c, is_usable<Length>) || !is_usable(insert.site->thickness - insert.h_ef))
    return not_described_for_blowout(insert);
  const std::array<Direction, 4> directions{insert.site->u, -1.0 * insert.site->u, insert.site->v,
                                            -1.0 * insert.site->v};
  Trace silent;
  std::optional<Force> least;
  std::size_t worst = 0;
  const auto of_edge = [&](std::size_t i, Trace& into) {
    const std::size_t beside = i < 2 ? 2 : 0;
    return resistance("insert " + insert.id, directions[i],
                      {.c_1 = c[i],
                       .c_2 = {c[beside], c[beside + 1]},
                       .below = insert.site->thickness - insert.h_ef,
                       .A_h = insert.A_brg,
                       .cracked = insert.cracked},
                      f_ck, model, into);
  };
  for (std::size_t i = 0; i < 4; ++i) {
    if (!occurs(insert.h_ef, c[i], model)) continue;
    if (!is_described_for_blowout(insert, c[i], f_ck)) return not_described_for_blowout(insert);
    const Force N = of_edge(i, silent);
    if (!is_usable(N)) return not_described_for_blowout(insert);
    if (!least || N < *least) least = N, worst = i;
  }
  if (!is_usable(f_ck) || !is_usable(insert.A_brg) || !is_usable(insert.h_ef)) return not_described_for_blowout(insert);
  if (!least) return Strength{std::nullopt};
  if (trace.is_recording()) of_edge(worst, trace);
  return Strength{Resistance<Force>{*least}};
}

Strength en_side_blowout(Group row, const Direction& towards, Length eccentricity, Stress f_ck,
                         const tables::HeadedInsertModel& model, Trace& trace) {
  if (row.empty()) return NotAssessed{"a row without inserts", {}};
  const HeadedInsert& first = *row.front();
  if (!is_finite(eccentricity)) return NotAssessed{"the place of the resultant of the row is not a number", {}};
  const Direction along = cross(first.site->normal, towards);
  std::optional<Side> side;
  std::vector<Length> places;
  for (const HeadedInsert* insert : row) {
    const auto edges = edge_distances(*insert, towards);
    if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
    const auto& c = std::get<EdgeDistances>(edges).c;
    const Length below = insert->site->thickness - insert->h_ef;
    if (!is_described_for_blowout(*insert, c[0], f_ck) || !is_usable(below)) return not_described_for_blowout(*insert);
    if (!occurs(insert->h_ef, c[0], model)) continue;
    places.push_back(dot(along, insert->at - first.at));
    if (!side) side = Side{.c_1 = c[0], .c_2 = {c[2], c[3]}, .below = below, .A_h = insert->A_brg, .cracked = false};
    side->c_1 = std::min(side->c_1, c[0]);
    side->c_2 = {std::min(side->c_2[0], c[2]), std::min(side->c_2[1], c[3])};
    side->below = std::min(side->below, below);
    side->A_h = std::min(side->A_h, insert->A_brg);
    side->cracked = side->cracked || insert->cracked;
  }
  if (!side) return Strength{std::nullopt};
  const Length reach = model.blowout_group.value * side->c_1;
  side->n = static_cast<double>(places.size());
  const RowSpacing spacing = row_spacing(std::move(places), reach);
  side->s = spacing.between_outer;
  side->s_2 = std::min(spacing.largest, reach);
  side->e = abs(eccentricity);
  const Force N = resistance(fmt::format("{} inserts in a row with {}", row.size(), first.id), towards, *side, f_ck,
                             model, trace);
  if (!is_usable(N)) return not_described_for_blowout(first);
  return Strength{Resistance<Force>{N}};
}

}  // namespace firstpick::resistances
