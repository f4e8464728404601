// A rated insert is as far from every edge as its supplier asks for: the declared load holds no nearer.
//
//   c >= minimum_edge                c: to the nearest edge of the face, openings included, from the real solid
//   c_along >= minimum_corner        c_along: across the direction of that edge, to the ends of a narrow face
//
// Source   the supplier's declaration; that inserts stand no nearer: WorkSafe WA Safety Alert 10/2012
//          (docs/rules/insert-edge-distance.md).
// Absent   minimum_edge: HOLD, wherever the insert sits. A curved face, whose edges are not measured: HOLD.
//          minimum_corner: minimum_edge counts in every direction.

#include <algorithm>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "resistances/edge_distance.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view edge_distance_rule = "insert-edge-distance";

Finding distance_judged(const plan::Insert& insert, Length asked, Length found, std::string_view to_what,
                        UnitSystem units) {
  Finding finding = compared<Length>(edge_distance_rule, insert.id, Demand<Length>{asked},
                                     Resistance<Length>{found}, 1.0, "supplier's declaration");
  if (finding.result == Result::fail) {
    finding.text = fmt::format("insert {} is {} from {}, its supplier asks for {}", insert.id,
                               firstpick::print(found, units, Rounding::down), to_what,
                               firstpick::print(asked, units, Rounding::up));
    finding.remedy = "another place for it, or an insert that is declared for this distance";
  }
  return finding;
}

const Outcome<resistances::EdgeDistances>& edges_of(const StageFacts& facts, std::size_t i) {
  auto& known = facts.anchorage.edges;
  known.resize(facts.plan.inserts.size());
  const piece::InsertSite& site = facts.body.sites.at(i);
  if (!known[i]) known[i] = resistances::edge_distances(site, site.u, site.v);
  return *known[i];
}

Finding edge_distance_of(const StageFacts& facts, std::size_t i, Trace& trace) {
  const plan::Insert& insert = facts.plan.inserts[i];
  if (!insert.rating || !insert.rating->minimum_edge)
    return missing(
        edge_distance_rule, insert.id,
        fmt::format("the distance from edges for which the load of insert {} is declared is not in the plan",
                    insert.id),
        "[[insert]] rating = { ..., minimum_edge = \"...\" }, from the supplier's declaration");
  const piece::InsertSite& site = facts.body.sites.at(i);
  if (!site.planar)
    return missing(edge_distance_rule, insert.id,
                   "the insert sits in a curved face, whose edges are not measured", "");
  if (!site.not_concrete || !(*site.not_concrete <= piece::whole_below))
    return missing(
        edge_distance_rule, insert.id,
        fmt::format(
            "below its face the concrete about insert {} is not whole within the edge distance that its "
            "supplier asks for: a void, or sides that draw in",
            insert.id),
        "another place, where the concrete goes straight down from the edges of the face");
  const auto& edges = edges_of(facts, i);
  if (const auto* gap = std::get_if<NotAssessed>(&edges))
    return missing(edge_distance_rule, insert.id, gap->why, gap->remedy);
  const auto& found = std::get<resistances::EdgeDistances>(edges);
  trace.add([&] {
    return Step{.words = fmt::format("nearest edge of the face of insert {}", insert.id),
                .result = {"c_near", in(mm, found.nearest), "mm"},
                .clause = "geometry"};
  });
  const UnitSystem units = facts.plan.piece.units;
  Finding nearest =
      distance_judged(insert, *insert.rating->minimum_edge, found.nearest, "the nearest edge", units);
  if (nearest.result != Result::pass || !insert.rating->minimum_corner) return nearest;
  const Length along = std::min(found.c[2], found.c[3]);  // u points to the nearest edge
  return distance_judged(insert, *insert.rating->minimum_corner, along, "the end of its face", units);
}

}  // namespace

std::vector<Finding> insert_edge_distance(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i)
    if (facts.plan.inserts[i].kind == "rated" || facts.plan.inserts[i].rating)
      findings.push_back(edge_distance_of(facts, i, trace));
  return findings;
}

}  // namespace firstpick::checks
