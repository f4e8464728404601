#pragma once

#include "resistances/headed_insert.hpp"
#include "resistances/insert_group.hpp"

namespace firstpick::resistances {

// What the bars about a headed insert hold in tension, in place of the concrete that would break out (ACI 318-19 17.5.2.1,
// EN 1992-4 7.2.1.9): nominal or characteristic, before the factor on inserts.
// f_c: the strength for the formulas.
// Not assessed: an insert without bars, a key of [insert.bars] that the plan does not give, a rule set without values for
// them, plain bars, bars too far from the insert, too thick, ending outside the concrete, or not developed on either side.
Outcome<Resistance<Force>> anchor_bars(const HeadedInsert& insert, Stress f_c, const tables::RuleSet& rules, Trace& trace);

// The pry-out resistance of inserts of which one or more has such bars: EN 1992-4 takes a share off, ACI 318 does not.
Outcome<Resistance<Force>> pryout_beside_bars(Group group, const Outcome<Resistance<Force>>& pryout,
                                              const tables::RuleSet& rules, Trace& trace);

}  // namespace firstpick::resistances
