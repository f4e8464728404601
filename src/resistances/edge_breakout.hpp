#pragma once

#include <array>
#include <optional>

#include "resistances/insert_group.hpp"
#include "resistances/shear_breakout.hpp"

namespace firstpick::resistances {

// Nominal concrete breakout strength in shear against a shear in the direction `shear` (piece axes, in the
// face, any length), V_cb (ACI 318-19 17.7.2): the least over the four edges, all of them at once. Where
// there is no shear, ask for the direction of the nearest edge, site->u.
Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const Direction& shear, Stress f_c,
                                         const tables::HeadedInsertModel& model, Trace& trace);

// The strengths of the four edges of an insert (u, -u, v, -v of its site), which do not depend on the shear;
// and the same V_cb from them, for an insert that is held against many shears.
using EdgeStrengths = std::array<EdgeStrength, 4>;
Outcome<EdgeStrengths> edge_strengths(const HeadedInsert& insert, Stress f_c,
                                      const tables::HeadedInsertModel& model);
Outcome<Resistance<Force>> edge_breakout(const HeadedInsert& insert, const EdgeStrengths& edges,
                                         const Direction& shear);

// The same of a row of shear_rows() against the resultant shear of its inserts, V_cbg, for the row's own
// edge. `eccentricity`: distance along the edge from the centroid of the row to that resultant. Empty: this
// edge does not limit, because the shear points straight away from it. Shears of the row that point away
// from the edge relieve the others; leave them out of the resultant. The row comes on top of each insert
// alone, never instead.
Outcome<std::optional<Resistance<Force>>> edge_breakout(Group row, const Direction& towards,
                                                        const Direction& shear, Length eccentricity,
                                                        Stress f_c, const tables::HeadedInsertModel& model,
                                                        Trace& trace);

}  // namespace firstpick::resistances
