#pragma once

#include "resistances/insert_group.hpp"
#include "resistances/projected_area.hpp"

namespace firstpick::resistances {

// Where the resultant force of a group acts: distance from its centroid along the group's axes
// (GroupLayout::u, v). The sign does not matter. No default: a caller says that there is none.
struct Eccentricity {
  explicit Eccentricity(Length along_u, Length along_v) : u(along_u), v(along_v) {}
  static Eccentricity none() { return Eccentricity(Length{}, Length{}); }
  Length u, v;
};

// Nominal concrete breakout strength in tension, N_cb of one insert or N_cbg of a group (ACI 318-19 17.6.2).
// `group`: the inserts in tension; f_c: the strength for the formulas.
// Not assessed: unequal embedments in the group, spacing under the minimum, anything not finite.
Outcome<Resistance<Force>> breakout(Group group, ProjectedAreas& areas, const Eccentricity& eccentricity,
                                    Stress f_c, const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
