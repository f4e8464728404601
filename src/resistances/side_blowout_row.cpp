// The concrete beside a row of deep heads near an edge blows out in one piece.
//
//   N_sbg = (1 + s / (6 c_a1)) N_sb     s: outer spacing along the edge; N_sb without a corner
//
// Source   ACI 318-19 17.6.4.2. The 6 is in the rule set.
// Occurs   for inserts with h_ef > 2.5 c_a1; the others of the row add nothing to s.
// Inputs   the least c_a1 and A_brg of the row; a gap between neighbours counts to 6 c_a1 at most.

#include <algorithm>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "resistances/basic_blowout.hpp"
#include "resistances/edge_distance.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/row_spacing.hpp"
#include "resistances/side_blowout.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

using Strength = Outcome<std::optional<Resistance<Force>>>;
}  // namespace

Outcome<std::optional<Resistance<Force>>> side_blowout(Group row, const Direction& towards, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace,
                                                       Length eccentricity) {
  if (model.en) return en_side_blowout(row, towards, eccentricity, f_c, model, trace);
  if (row.empty()) return NotAssessed{"a row without inserts", {}};
  const HeadedInsert& first = *row.front();
  const Direction along = cross(first.site->normal, towards);
  std::optional<Length> c_a1;
  Area A_brg = first.A_brg;
  std::vector<Length> places;
  for (const HeadedInsert* insert : row) {
    const auto edges = edge_distances(*insert, towards);
    if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
    const Length c = std::get<EdgeDistances>(edges).c[0];
    if (!is_described_for_blowout(*insert, c, f_c)) return not_described_for_blowout(*insert);
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
  if (!is_usable(N_sbg)) return not_described_for_blowout(first);
  trace.add([&] {
    return Step{
        .words = fmt::format("side-face blowout strength of {} inserts in a row with {}, edge towards {}",
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
