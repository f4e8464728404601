// Shear breaks the edge of the concrete off: one insert against a shear in any direction of its face.
//
//   the least R of its four edges, all of them at once (R: shear_parts.cpp)
//
// Source   ACI 318-19 17.7.2.1.
// Inputs   c_a1, c_a2 in the axes of the insert's site; h_a: concrete behind the insert.

#include "resistances/edge_breakout.hpp"

#include <array>
#include <cstddef>

#include <fmt/format.h>

#include "resistances/shear_breakout.hpp"
#include "resistances/shear_parts.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

constexpr std::size_t no_edge = 4;

struct Governing {
  std::size_t edge = no_edge;
  Direction towards;
  ShearParts parts{};
  Force R{};
};

Outcome<Governing> governing_edge(const HeadedInsert& insert, const EdgeStrengths& edges,
                                  const Direction& shear) {
  const piece::InsertSite& site = *insert.site;
  if (!has_direction(shear, site))
    return NotAssessed{fmt::format("the shear on insert {} has no direction in its face", insert.id), {}};
  const std::array<Direction, 4> directions{site.u, -1.0 * site.u, site.v, -1.0 * site.v};
  Governing least;
  for (std::size_t i = 0; i < 4; ++i) {
    const ShearParts parts = parts_of(shear, directions[i], i < 2 ? site.v : site.u);
    if (!limits(parts)) continue;
    const Force R = against_resultant(parts, edges[i]);
    if (!is_usable(R)) return not_described_for_shear(insert);
    if (least.edge == no_edge || R < least.R) least = {i, directions[i], parts, R};
  }
  if (least.edge == no_edge) return not_described_for_shear(insert);
  return least;
}

}  // namespace

Outcome<EdgeStrengths> edge_strengths(const HeadedInsert& insert, Stress f_c,
                                      const tables::HeadedInsertModel& model) {
  if (!is_described_for_shear(insert, f_c)) return not_described_for_shear(insert);
  Trace silent;
  const auto strength = [&](std::size_t edge) {
    return shear_breakout(edge_of(insert, edge), f_c, model, silent);
  };
  return EdgeStrengths{strength(0), strength(1), strength(2), strength(3)};
}

Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const EdgeStrengths& edges,
                                         const Direction& shear) {
  const auto governing = governing_edge(insert, edges, shear);
  if (const auto* why = std::get_if<NotAssessed>(&governing)) return *why;
  return Resistance<Force>{std::get<Governing>(governing).R};
}

Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const Direction& shear, Stress f_c,
                                         const tables::HeadedInsertModel& model, Trace& trace) {
  const auto edges = edge_strengths(insert, f_c, model);
  if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
  const auto found = governing_edge(insert, std::get<EdgeStrengths>(edges), shear);
  if (const auto* why = std::get_if<NotAssessed>(&found)) return *why;
  const auto& governing = std::get<Governing>(found);
  if (trace.is_recording()) {
    const EdgeStrength strength = shear_breakout(edge_of(insert, governing.edge), f_c, model, trace);
    record_resultant("insert " + insert.id, governing.towards, governing.parts, strength, governing.R, model,
                     trace);
  }
  return Resistance<Force>{governing.R};
}

}  // namespace firstpick::resistances
