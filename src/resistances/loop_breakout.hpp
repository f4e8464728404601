#pragma once

#include "resistances/breakout.hpp"

namespace firstpick::resistances {

// Nominal breakout strength of a loop of bar alone, as of a cast-in insert of its depth (ACI 318-19 17.6.2).
// Not assessed: embedment, diameter or [concrete] cracked absent, a curved face, a loop not inside the concrete.
Outcome<Resistance<Force>> loop_breakout(const plan::Insert& insert, const piece::InsertSite& site,
                                         const plan::Concrete& concrete, Stress f_c, const tables::RuleSet& rules,
                                         const tables::Tables& tables, ProjectedAreas& areas, Trace& trace);

}  // namespace firstpick::resistances
