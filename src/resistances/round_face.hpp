#pragma once

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// An insert whose site is curved, as it stands in the flat face inside the concrete that gives it the largest breakout strength
// in tension: with that site, its edges, and the embedment below it. Not assessed: no such face, bars about the insert.
Outcome<HeadedInsert> in_round_face(HeadedInsert insert, const tables::RuleSet& rules, Trace& trace);

}  // namespace firstpick::resistances
