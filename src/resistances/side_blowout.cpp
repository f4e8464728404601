// The concrete beside a deep head near an edge blows out sideways.
//
//   N_sb  = 160 c_a1 sqrt(A_brg) lambda_a sqrt(f_c)             times (1 + c_a2 / c_a1) / 4 where c_a2 < 3 c_a1,
//                                                              1 <= c_a2 / c_a1
//   N_sbg = (1 + s / (6 c_a1)) N_sb without that factor         s: outer spacing along the edge
//
// Source   ACI 318-19 17.6.4.1, 17.6.4.1.1, 17.6.4.2. The 160 (lb, in), 3 and 6 are in the rule set; 4 is 1 + 3.
// Occurs   where h_ef > 2.5 c_a1 and not otherwise: then there is no strength to compare with.
// Inputs   c_a1 to the nearest edge, c_a2 the lesser distance along it; for a row the least c_a1 and A_brg of its inserts.

#include "resistances/side_blowout.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "resistances/edge_distance.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/row_spacing.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

using Strength = Outcome<std::optional<Resistance<Force>>>;

NotAssessed not_described(const HeadedInsert& insert) {
  return {fmt::format("insert {}, its edges or the concrete strength are not described by numbers above zero", insert.id),
          {}};
}

bool is_described(const HeadedInsert& insert, Length c_a1, Stress f_c) {
  return is_usable(insert.h_ef) && is_usable(insert.A_brg) && is_usable(insert.lambda_a) && is_usable(c_a1) &&
         is_usable(f_c);
}

Force basic_blowout(Length c_a1, Area A_brg, Ratio lambda_a, Stress f_c, const tables::HeadedInsertModel& model,
                    Trace& trace) {
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

}  // namespace

Outcome<std::optional<Resistance<Force>>> side_blowout(const HeadedInsert& insert, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace) {
  const auto& c = insert.edges.c;
  const std::size_t nearest = static_cast<std::size_t>(std::min_element(c.begin(), c.end()) - c.begin());
  const Length c_a1 = c[nearest];
  const Length c_a2 = nearest < 2 ? std::min(c[2], c[3]) : std::min(c[0], c[1]);
  if (!is_described(insert, c_a1, f_c) || !std::ranges::all_of(c, is_usable<Length>)) return not_described(insert);
  if (insert.h_ef <= model.blowout_depth.value * c_a1) return Strength{std::nullopt};

  const Force N_sb = basic_blowout(c_a1, insert.A_brg, insert.lambda_a, f_c, model, trace);
  const double corner = model.blowout_corner.value;
  const double factor = c_a2 < corner * c_a1 ? (1.0 + std::max(1.0, double{c_a2 / c_a1})) / (1.0 + corner) : 1.0;
  const Force N_sb_corner = factor * N_sb;
  if (!is_usable(N_sb_corner)) return not_described(insert);
  trace.add([&] {
    return Step{.words = fmt::format("side-face blowout strength of insert {}, edge towards {}", insert.id,
                                     direction_in_words(nearest < 2 ? (nearest == 0 ? 1.0 : -1.0) * insert.site->u
                                                                    : (nearest == 2 ? 1.0 : -1.0) * insert.site->v)),
                .result = lb_in("N_sb_corner", N_sb_corner),
                .formula = "(1 + min(max(c_a2 / c_a1, 1), k_corner)) / (1 + k_corner) * N_sb",
                .given = {lb_in("c_a2", c_a2), lb_in("c_a1", c_a1), lb_in("k_corner", model.blowout_corner.value),
                          lb_in("N_sb", N_sb)},
                .clause = "ACI 318-19 17.6.4.1.1",
                .sources = {model.blowout_corner.source}};
  });
  return Strength{Resistance<Force>{N_sb_corner}};
}

Outcome<std::optional<Resistance<Force>>> side_blowout(Group row, const Direction& towards, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace) {
  if (row.empty()) return NotAssessed{"a row without inserts", {}};
  const HeadedInsert& first = *row.front();
  const Direction along = cross(first.site->normal, towards);
  std::optional<Length> c_a1;
  Area A_brg = first.A_brg;
  std::vector<Length> places;
  for (const HeadedInsert* insert : row) {
    const auto edges = edge_distances(*insert->site, towards, along);
    if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
    const Length c = std::get<EdgeDistances>(edges).c[0];
    if (!is_described(*insert, c, f_c)) return not_described(*insert);
    if (insert->h_ef <= model.blowout_depth.value * c) continue;
    places.push_back(dot(along, insert->at - first.at));
    A_brg = c_a1 ? std::min(A_brg, insert->A_brg) : insert->A_brg;
    c_a1 = c_a1 ? std::min(*c_a1, c) : c;
  }
  if (!c_a1) return Strength{std::nullopt};

  const Force N_sb = basic_blowout(*c_a1, A_brg, first.lambda_a, f_c, model, trace);
  const Length reach = model.blowout_group.value * *c_a1;
  const Length s = row_spacing(std::move(places), reach).between_outer;
  const Force N_sbg = (1.0 + s / reach) * N_sb;
  if (!is_usable(N_sbg)) return not_described(first);
  trace.add([&] {
    return Step{.words = fmt::format("side-face blowout strength of {} inserts in a row with {}, edge towards {}",
                                     row.size(), first.id, direction_in_words(towards)),
                .result = lb_in("N_sbg", N_sbg),
                .formula = "(1 + s / (k_s * c_a1)) * N_sb",
                .given = {lb_in("s", s), lb_in("k_s", model.blowout_group.value), lb_in("c_a1", *c_a1),
                          lb_in("N_sb", N_sb)},
                .clause = "ACI 318-19 17.6.4.2",
                .sources = {model.blowout_group.source}};
  });
  return Strength{Resistance<Force>{N_sbg}};
}

}  // namespace firstpick::resistances
