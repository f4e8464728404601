#include "checks/modes_together.hpp"

#include "checks/mode_factor.hpp"
#include "checks/modes_alone.hpp"
#include "resistances/anchor_bars.hpp"
#include "resistances/pryout.hpp"
#include "resistances/side_blowout.hpp"

namespace firstpick::checks {

namespace {

// A shear along the edge is not away from it, however the last bit of its direction falls.
constexpr double along_the_edge = 1e-9;

bool is_away_from(const Direction& edge, const demands::InsertForce& force, const piece::InsertSite& site) {
  return !(dot(shear_direction(force, site), edge) >= -along_the_edge);
}

Outcome<Resistance<Force>> group_breakout(const StageFacts& facts, const LoadedInserts& group, Stress f_c,
                                          Trace& trace) {
  const auto offset = eccentricity(group, facts);
  if (const auto* gap = std::get_if<NotAssessed>(&offset)) return *gap;
  return resistances::breakout(group.inserts, facts.anchorage.areas,
                               std::get<resistances::Eccentricity>(offset), f_c, facts.rules.headed, trace);
}

// Inserts that each have bars of their own: the bars of all, against the sum. Each alone is judged by its own bars too, so
// that where the resultant acts changes nothing. With one insert without bars all count by the concrete.
Outcome<Resistance<Force>> group_held(const StageFacts& facts, const LoadedInserts& group, Stress f_c, Trace& trace) {
  if (!held_by_bars(group)) return group_breakout(facts, group, f_c, trace);
  Force sum{};
  for (const resistances::HeadedInsert* insert : group.inserts) {
    const auto bars = resistances::anchor_bars(*insert, f_c, facts.rules, trace);
    if (const auto* gap = std::get_if<NotAssessed>(&bars)) return *gap;
    sum += std::get<Resistance<Force>>(bars).value;
  }
  return Resistance<Force>{sum};
}

NominalForce row_blowout(const StageFacts& facts, const LoadedInserts& row, const Direction& towards, Stress f_c,
                         Trace& trace) {
  const auto offset = eccentricity(row, facts);
  if (const auto* gap = std::get_if<NotAssessed>(&offset)) return *gap;
  const auto& layout = std::get<resistances::GroupLayout>(facts.anchorage.areas.layout(row.inserts));
  const auto& e = std::get<resistances::Eccentricity>(offset);
  const Direction along = cross(facts.body.sites.at(row.indices.front()).normal, towards);
  return resistances::side_blowout(row.inserts, towards, f_c, facts.rules.headed, trace,
                                   abs(dot(along, layout.u * e.u + layout.v * e.v)));
}

}  // namespace

std::size_t number_of_sets(Mode mode, const StageFacts& facts) {
  switch (mode) {
    case Mode::breakout:
    case Mode::pryout: return facts.anchorage.groups.size();
    case Mode::side_blowout: return facts.anchorage.blowout_rows.size();
    case Mode::edge_breakout: return facts.anchorage.shear_rows.size();
    case Mode::steel_tension:
    case Mode::pullout:
    case Mode::steel_shear: break;
  }
  return 0;
}

std::span<const std::size_t> inserts_of_set(Mode mode, const StageFacts& facts, std::size_t set) {
  if (mode == Mode::side_blowout) return facts.anchorage.blowout_rows.at(set).inserts;
  if (mode == Mode::edge_breakout) return facts.anchorage.shear_rows.at(set).inserts;
  return facts.anchorage.groups.at(set);
}

LoadedInserts taking_part(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                          std::size_t set) {
  const std::span<const std::size_t> inserts = inserts_of_set(mode, facts, set);
  LoadedInserts loaded;
  loaded.reserve(inserts.size());
  for (const std::size_t insert : inserts) {
    if (mode == Mode::edge_breakout && is_away_from(facts.anchorage.shear_rows.at(set).towards,
                                                    situation.forces.at(insert), facts.body.sites.at(insert)))
      continue;
    loaded.add(facts, insert, demand_alone(mode, situation, insert));
  }
  return loaded;
}

ModeCheck check_together(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                         std::size_t set, const LoadedInserts& together, Trace& trace) {
  const auto& model = facts.rules.headed;
  const Stress f_c = std::get<Stress>(facts.formula_strength);
  const auto against = [&](const NominalForce& nominal) {
    return judged(together.sum, nominal, mode_factor(mode, facts, together.indices.front()), together.indices);
  };
  switch (mode) {
    case Mode::breakout: return against(where_it_occurs(group_held(facts, together, f_c, trace)));
    case Mode::pryout:
      return against(where_it_occurs(resistances::pryout_beside_bars(
          together.inserts,
          resistances::pryout(together.inserts, group_breakout(facts, together, f_c, trace), model, trace), facts.rules,
          trace)));
    case Mode::side_blowout:
      return against(row_blowout(facts, together, facts.anchorage.blowout_rows.at(set).towards, f_c, trace));
    case Mode::edge_breakout:
      return check_edge_row(facts, situation, facts.anchorage.shear_rows.at(set), together, f_c, trace);
    case Mode::steel_tension:
    case Mode::pullout:
    case Mode::steel_shear: break;
  }
  return against(NotAssessed{"inserts do not fail together in this way", {}});
}

}  // namespace firstpick::checks
