// The concrete beside a deep head near an edge blows out sideways.
//
//   N_sb (basic_blowout.cpp), times (1 + c_a2 / c_a1) / (1 + 3) where c_a2 < 3 c_a1, with 1 <= c_a2 / c_a1
//
// Source   ACI 318-19 17.6.4.1, 17.6.4.1.1. The 3 is in the rule set.
// Occurs   where h_ef > 2.5 c_a1 and not otherwise: then there is no strength to compare with.
// Inputs   c_a1 to the nearest edge, c_a2 the lesser distance along it. No other edge allows less.

#include "resistances/side_blowout.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

#include "resistances/basic_blowout.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

using Strength = Outcome<std::optional<Resistance<Force>>>;
}  // namespace

Outcome<std::optional<Resistance<Force>>> side_blowout(const HeadedInsert& insert, Stress f_c,
                                                       const tables::HeadedInsertModel& model, Trace& trace) {
  if (model.en) return en_side_blowout(insert, f_c, model, trace);
  const auto& c = insert.edges.c;
  const std::size_t nearest = static_cast<std::size_t>(std::min_element(c.begin(), c.end()) - c.begin());
  const Length c_a1 = c[nearest];
  const Length c_a2 = nearest < 2 ? std::min(c[2], c[3]) : std::min(c[0], c[1]);
  if (!is_described_for_blowout(insert, c_a1, f_c) || !std::ranges::all_of(c, is_usable<Length>))
    return not_described_for_blowout(insert);
  if (insert.h_ef <= model.blowout_depth.value * c_a1) return Strength{std::nullopt};

  const Force N_sb = basic_blowout(c_a1, insert.A_brg, insert.lambda_a, f_c, model, trace);
  const double corner = model.blowout_corner.value;
  const double factor =
      c_a2 < corner * c_a1 ? (1.0 + std::max(1.0, double{c_a2 / c_a1})) / (1.0 + corner) : 1.0;
  const Force N_sb_corner = factor * N_sb;
  if (!is_usable(N_sb_corner)) return not_described_for_blowout(insert);
  trace.add([&] {
    return Step{
        .words = fmt::format("side-face blowout strength of insert {}, edge towards {}", insert.id,
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

}  // namespace firstpick::resistances
