// The row's inserts whose shear does not point away from the edge, and the resultant of their shears.

#include "checks/mode_factor.hpp"
#include "checks/modes_alone.hpp"
#include "checks/modes_together.hpp"
#include "resistances/edge_breakout.hpp"

namespace firstpick::checks {

namespace {

Direction direction_of(const ForceVector& force, Force length, const Direction& where_there_is_none) {
  if (!(length > Force{})) return where_there_is_none;
  return {(force.x / length).value(), (force.y / length).value(), (force.z / length).value()};
}

}  // namespace

ModeCheck check_edge_row(const StageFacts& facts, const InsertSituation& situation,
                         const resistances::EdgeRow& row, const LoadedInserts& together, Stress f_c,
                         Trace& trace) {
  const double factor = mode_factor(Mode::edge_breakout, facts, together.indices.front());
  ForceVector resultant{};
  for (const std::size_t i : together.indices) {
    const demands::InsertForce& force = situation.forces.at(i);
    resultant = resultant + shear_direction(force, facts.body.sites.at(i)) * force.shear;
  }
  const auto offset = eccentricity(together, facts);
  if (const auto* gap = std::get_if<NotAssessed>(&offset))
    return judged(together.sum, *gap, factor, together.indices);
  const auto& e = std::get<resistances::Eccentricity>(offset);
  const auto& layout = std::get<resistances::GroupLayout>(facts.anchorage.areas.layout(together.inserts));
  // Along the edge: what is left of the offset when its part towards the edge is taken away.
  const Position whole = layout.u * e.u + layout.v * e.v;
  const Position along_edge = whole - row.towards * dot(row.towards, whole);
  const Force demand = norm(resultant);
  return judged(
      demand,
      resistances::edge_breakout(together.inserts, row.towards, direction_of(resultant, demand, row.towards),
                                 norm(along_edge), f_c, facts.rules.headed, trace),
      factor, together.indices);
}

}  // namespace firstpick::checks
