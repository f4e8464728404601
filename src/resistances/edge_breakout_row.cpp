// Shear breaks the edge of the concrete off in front of a row of inserts, all of it in one piece.
//
//   R of the row's edge (shear_parts.cpp), with the outer spacing s of the row in A_Vc
//
// Source   ACI 318-19 17.7.2.1(b).
// Inputs   the least c_a1, c_a2, h_ef, d_a and h_a of the row, so that all its shear is taken by its front; a
//          gap between neighbours counts to 3 c_a1 at most.

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "resistances/edge_breakout.hpp"
#include "resistances/edge_distance.hpp"
#include "resistances/row_spacing.hpp"
#include "resistances/shear_breakout.hpp"
#include "resistances/shear_parts.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

Outcome<ShearEdge> edge_of(Group row, const Direction& towards, const Direction& along, Length eccentricity,
                           Stress f_c, const tables::HeadedInsertModel& model) {
  ShearEdge edge = edge_of(*row.front(), 0);
  edge.eccentricity = abs(eccentricity);
  std::vector<Length> places;
  for (const HeadedInsert* insert : row) {
    if (insert->site->face != row.front()->site->face)
      return NotAssessed{fmt::format("inserts {} and {} are not in one face", row.front()->id, insert->id),
                         {}};
    if (!is_described_for_shear(*insert, f_c)) return not_described_for_shear(*insert);
    const auto distances = edge_distances(*insert, towards);
    if (const auto* why = std::get_if<NotAssessed>(&distances)) return *why;
    const auto& c = std::get<EdgeDistances>(distances).c;
    const bool is_first = places.empty();
    edge.c_a1 = is_first ? c[0] : std::min(edge.c_a1, c[0]);
    edge.c_a2 = is_first ? std::array{c[2], c[3]}
                         : std::array{std::min(edge.c_a2[0], c[2]), std::min(edge.c_a2[1], c[3])};
    edge.h_a = std::min(edge.h_a, insert->site->thickness);
    edge.h_ef = std::min(edge.h_ef, insert->h_ef);
    edge.d_a = std::min(edge.d_a, insert->d_a);
    places.push_back(dot(along, insert->at - row.front()->at));
  }
  const RowSpacing spacing = row_spacing(std::move(places), 2.0 * model.shear_extent.value * edge.c_a1);
  edge.s = spacing.between_outer;
  edge.s_max = spacing.largest;
  return edge;
}

}  // namespace

Outcome<std::optional<Resistance<Force>>> edge_breakout(Group row, const Direction& towards,
                                                        const Direction& shear, Length eccentricity,
                                                        Stress f_c, const tables::HeadedInsertModel& model,
                                                        Trace& trace) {
  using Strength = Outcome<std::optional<Resistance<Force>>>;
  if (row.empty()) return NotAssessed{"a row without inserts", {}};
  const HeadedInsert& first = *row.front();
  if (!has_direction(shear, *first.site) || !is_finite(eccentricity))
    return NotAssessed{fmt::format("the shear on the row of insert {} has no direction or place", first.id),
                       {}};
  const Direction along = cross(first.site->normal, towards);
  const auto placed = edge_of(row, towards, along, eccentricity, f_c, model);
  if (const auto* why = std::get_if<NotAssessed>(&placed)) return *why;

  const ShearParts parts = parts_of(shear, towards, along);
  if (!limits(parts)) return Strength{std::nullopt};
  const EdgeStrength strength = shear_breakout(std::get<ShearEdge>(placed), f_c, model, trace);
  const Force R = against_resultant(parts, strength);
  if (!is_usable(R)) return not_described_for_shear(first);
  if (trace.is_recording())
    record_resultant(fmt::format("{} inserts in a row with {}", row.size(), first.id), towards, parts,
                     strength, R, model, trace);
  return Strength{Resistance<Force>{R}};
}

}  // namespace firstpick::resistances
