// An insert in a curved face, by a body with a flat face that lies inside the concrete: what is more of it makes no formula less.
//
//   h_ef = h_e - z_f        h_e: embedment in the plan; z_f: how far the flat face lies below the insert
//
// The body: piece/contained_faces.cpp. Everything of the concrete (breakout in tension and shear, pry-out, side-face blowout) is
// calculated in it, with its edges and its thickness. Steel and the bearing of the head are those of the insert.
//
// Source   geometry: each body stands wholly in the concrete, and apart from that of every other insert of the plan.
// Choice   of the faces found, that with the largest breakout strength in tension, for every formula.
// Range    an edge of the body at least half of the least spacing of inserts away; no bars about the insert.

#include "resistances/round_face.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

#include "resistances/breakout.hpp"
#include "resistances/edge_distance.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

struct InFlatFace {
  HeadedInsert insert;
  Force breakout;
};

std::optional<InFlatFace> in_flat_face(HeadedInsert insert, const piece::InsertSite& flat,
                                       const tables::RuleSet& rules) {
  const auto edges = edge_distances(flat, flat.u, flat.v);
  if (!is_assessed(edges)) return {};
  insert.site = &flat;
  insert.edges = std::get<EdgeDistances>(edges);
  insert.h_ef -= flat.sunk;
  const Length least = 0.5 * rules.headed.minimum_spacing.value * insert.d_a;
  if (!is_usable(insert.h_ef) || !(insert.h_ef < flat.thickness) || !(insert.edges.nearest >= least))
    return {};
  Trace silent;
  ProjectedAreas areas;
  const std::array<const HeadedInsert*, 1> one{&insert};
  const auto strength =
      breakout(one, areas, Eccentricity::none(), rules.minimum_strength.value, rules.headed, silent);
  const auto* known = std::get_if<Resistance<Force>>(&strength);
  if (!known) return {};
  return InFlatFace{std::move(insert), known->value};
}

}  // namespace

Outcome<HeadedInsert> in_round_face(HeadedInsert insert, const tables::RuleSet& rules, Trace& trace) {
  if (insert.bars)
    return NotAssessed{
        fmt::format("insert {} sits in a curved face, and bars about it are counted in a flat one only",
                    insert.id),
        "take [insert.bars] out, or put the insert in a flat face"};
  std::optional<InFlatFace> best;
  for (const piece::InsertSite& flat : insert.site->within) {
    auto found = in_flat_face(insert, flat, rules);
    if (found && (!best || found->breakout > best->breakout)) best = std::move(found);
  }
  if (!best)
    return NotAssessed{
        fmt::format("insert {} sits in a curved face; the formulas are for a flat face, and inside the "
                    "concrete there is none "
                    "above its head that is large enough and apart from other inserts",
                    insert.id),
        "an insert in a flat face (the rim of a ring is one), or one with a rating declared for such a face"};
  const bool by_en = rules.headed.en.has_value();
  const auto term = [&](std::string symbol, Length length) {
    return by_en ? mm_n(std::move(symbol), length) : lb_in(std::move(symbol), length);
  };
  const HeadedInsert& flat = best->insert;
  trace.add([&] {
    return Step{
        .words = fmt::format(
            "insert {} sits in a curved face: calculated in a flat face inside the concrete, below it by",
            insert.id),
        .result = term("z_f", flat.site->sunk),
        .clause = "geometry"};
  });
  trace.add([&] {
    return Step{.words = "embedment below that face",
                .result = term("h_ef", flat.h_ef),
                .formula = "h_e - z_f",
                .given = {term("h_e", insert.h_ef), term("z_f", flat.site->sunk)},
                .clause = "geometry"};
  });
  return flat;
}

}  // namespace firstpick::resistances
