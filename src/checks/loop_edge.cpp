// A loop is as far from every edge as the engineer's design or test asks for.
//
//   c >= minimum_edge      c: to the nearest edge of the face, openings included, from the real solid
//
// Source   tests of loops of strand blew the side face out where an inclined leg lost its edge distance; no source read
//          gives a distance (docs/rules/loop-edge.md). So the plan must.
// Absent   minimum_edge: HOLD. A curved face, whose edges are not measured: HOLD.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"
#include "resistances/edge_distance.hpp"

namespace firstpick::checks {

std::vector<Finding> loop_edge(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-edge";
  const UnitSystem units = facts.plan.piece.units;
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (!insert.loop || !insert.loop->minimum_edge)
      return missing(id, insert.id,
                     "no source gives the edge distance that a loop needs, and the plan does not say what the engineer's "
                     "design or test asks for",
                     "[[insert]] loop = { minimum_edge = \"...\" }");
    const piece::InsertSite& site = facts.body.sites.at(i);
    if (!site.planar)
      return missing(id, insert.id, "the loop sits in a curved face, whose edges are not measured", "");
    const auto edges = resistances::edge_distances(site, site.u, site.v);
    if (const auto* gap = std::get_if<NotAssessed>(&edges)) return missing(id, insert.id, gap->why, gap->remedy);
    const Length c = std::get<resistances::EdgeDistances>(edges).nearest;
    trace.add([&] {
      return Step{.words = fmt::format("nearest edge of the face of loop {}", insert.id),
                  .result = {"c", in(mm, c), "mm"},
                  .clause = "geometry"};
    });
    Finding finding = compared<Length>(id, insert.id, Demand<Length>{*insert.loop->minimum_edge}, Resistance<Length>{c}, 1.0,
                                       "engineer's design or test");
    if (finding.result == Result::fail) {
      finding.text = fmt::format("loop {} is {} from the nearest edge, {} is asked for", insert.id,
                                 firstpick::print(c, units, Rounding::down),
                                 firstpick::print(*insert.loop->minimum_edge, units, Rounding::up));
      finding.remedy = "another place for it";
    }
    return finding;
  });
}

}  // namespace firstpick::checks
