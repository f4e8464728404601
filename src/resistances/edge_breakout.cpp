// Shear breaks the edge of the concrete off: an insert or a row against a shear in any direction of its face.
//
// At an angle a to the way out of an edge, a shear has the parts p = max(0, cos a) towards it and q = |sin a| along it:
//
//   R = 1 / sqrt((p / V_cb)^2 + (q / V_cb_par)^2)                     one edge
//   R of an insert is the least of its four edges
//
// Source   V_cb, V_cb_par: shear_breakout.cpp. ACI 318-19 R17.7.2.1 checks the parts one by one; R is never more than
//          that gives, and up to sqrt(2) less.
// Inputs   h_a: concrete behind the insert. A row has the least c_a1, c_a2, h_ef, d_a and h_a of its inserts, so all its
//          shear is taken by its front.
// Choice   A shear straight away from an edge does not break it.

#include "resistances/edge_breakout.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "resistances/edge_distance.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/row_spacing.hpp"
#include "resistances/shear_breakout.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

struct Parts {  // of a shear of length 1
  double towards, along;
};

Parts parts_of(const Direction& shear, const Direction& towards, const Direction& along) {
  const double out = dot(shear, towards), beside = dot(shear, along), whole = std::hypot(out, beside);
  return {std::max(0.0, out / whole), std::abs(beside / whole)};
}

bool limits(const Parts& parts) {
  constexpr double rounding = 1e-9;  // of a direction: straight away is not so to the last bit
  return parts.towards > 0.0 || parts.along > rounding;
}

Force against_resultant(const Parts& parts, const EdgeStrength& strength) {
  const double towards = parts.towards * newton / strength.towards, along = parts.along * newton / strength.along;
  return newton / std::sqrt(towards * towards + along * along);
}

bool has_direction(const Direction& shear, const piece::InsertSite& site) {
  const double length = std::hypot(dot(shear, site.u), dot(shear, site.v));
  return std::isfinite(length) && length > 0.0;
}

NotAssessed not_described(const HeadedInsert& insert) {
  return {fmt::format("insert {}, its edges or the concrete strength are not described by numbers above zero",
                      insert.id),
          {}};
}

bool is_described(const HeadedInsert& insert, Stress f_c) {
  return is_usable(insert.h_ef) && is_usable(insert.d_a) && is_usable(insert.lambda_a) &&
         is_usable(insert.site->thickness) && std::ranges::all_of(insert.edges.c, is_usable<Length>) && is_usable(f_c);
}

void record(const std::string& whose, const Direction& towards, const Parts& parts, const EdgeStrength& strength,
            Force R, Trace& trace) {
  trace.add([&] {
    return Step{.words = fmt::format("edge breakout strength of {} against its shear, edge towards {}", whose,
                                     direction_in_words(towards)),
                .result = lb_in("R", R),
                .formula = "1 / sqrt((p / V_cb)^2 + (q / V_cb_par)^2)",
                .given = {lb_in("p", Ratio{parts.towards}), lb_in("V_cb", strength.towards),
                          lb_in("q", Ratio{parts.along}), lb_in("V_cb_par", strength.along)},
                .clause = "ACI 318-19 17.7.2.1, R17.7.2.1",
                .sources = {}};
  });
}

ShearEdge edge_of(const HeadedInsert& insert, std::size_t direction) {
  const auto& c = insert.edges.c;
  const std::size_t beside = direction < 2 ? 2 : 0;
  return {.c_a1 = c[direction],
          .c_a2 = {c[beside], c[beside + 1]},
          .s = Length{},
          .s_max = Length{},
          .eccentricity = Length{},
          .h_a = insert.site->thickness,
          .h_ef = insert.h_ef,
          .d_a = insert.d_a,
          .lambda_a = insert.lambda_a,
          .cracked = insert.cracked};
}

Outcome<ShearEdge> edge_of(Group row, const Direction& towards, const Direction& along, Length eccentricity,
                           Stress f_c, const tables::HeadedInsertModel& model) {
  ShearEdge edge = edge_of(*row.front(), 0);
  edge.eccentricity = abs(eccentricity);
  std::vector<Length> places;
  for (const HeadedInsert* insert : row) {
    if (insert->site->face != row.front()->site->face)
      return NotAssessed{fmt::format("inserts {} and {} are not in one face", row.front()->id, insert->id), {}};
    if (!is_described(*insert, f_c)) return not_described(*insert);
    const auto distances = edge_distances(*insert->site, towards, along);
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

Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const Direction& shear, Stress f_c,
                                         const tables::HeadedInsertModel& model, Trace& trace) {
  if (!is_described(insert, f_c)) return not_described(insert);
  const piece::InsertSite& site = *insert.site;
  if (!has_direction(shear, site))
    return NotAssessed{fmt::format("the shear on insert {} has no direction in its face", insert.id), {}};

  const std::array<Direction, 4> directions{site.u, -1.0 * site.u, site.v, -1.0 * site.v};
  Trace silent;
  std::array<Force, 4> R{};
  std::size_t governing = 4;
  for (std::size_t i = 0; i < 4; ++i) {
    const Parts parts = parts_of(shear, directions[i], i < 2 ? site.v : site.u);
    if (!limits(parts)) continue;
    R[i] = against_resultant(parts, shear_breakout(edge_of(insert, i), f_c, model, silent));
    if (!is_usable(R[i])) return not_described(insert);
    if (governing == 4 || R[i] < R[governing]) governing = i;
  }
  if (governing == 4) return not_described(insert);

  if (trace.is_recording()) {
    const EdgeStrength strength = shear_breakout(edge_of(insert, governing), f_c, model, trace);
    record("insert " + insert.id, directions[governing],
           parts_of(shear, directions[governing], governing < 2 ? site.v : site.u), strength, R[governing], trace);
  }
  return Resistance<Force>{R[governing]};
}

Outcome<std::optional<Resistance<Force>>> edge_breakout(Group row, const Direction& towards, const Direction& shear,
                                                        Length eccentricity, Stress f_c,
                                                        const tables::HeadedInsertModel& model, Trace& trace) {
  using Strength = Outcome<std::optional<Resistance<Force>>>;
  if (row.empty()) return NotAssessed{"a row without inserts", {}};
  const HeadedInsert& first = *row.front();
  if (!has_direction(shear, *first.site) || !is_finite(eccentricity))
    return NotAssessed{fmt::format("the shear on the row of insert {} has no direction or place", first.id), {}};
  const Direction along = cross(first.site->normal, towards);
  const auto placed = edge_of(row, towards, along, eccentricity, f_c, model);
  if (const auto* why = std::get_if<NotAssessed>(&placed)) return *why;

  const Parts parts = parts_of(shear, towards, along);
  if (!limits(parts)) return Strength{std::nullopt};
  const EdgeStrength strength = shear_breakout(std::get<ShearEdge>(placed), f_c, model, trace);
  const Force R = against_resultant(parts, strength);
  if (!is_usable(R)) return not_described(first);
  record(fmt::format("{} inserts in a row with {}", row.size(), first.id), towards, parts, strength, R, trace);
  return Strength{Resistance<Force>{R}};
}

}  // namespace firstpick::resistances
