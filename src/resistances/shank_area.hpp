#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"

namespace firstpick::resistances {

// Steel area of the shank of an insert, A_se; `shank` must be there and a number above zero. Not assessed, with
// the line to write: a bolt of which the plan does not say whether a thread lies in its stressed length, a
// thread without its pitch or with one that leaves nothing of the shank.
Outcome<Area> shank_area(const plan::Insert& insert, Trace& trace);

}  // namespace firstpick::resistances
