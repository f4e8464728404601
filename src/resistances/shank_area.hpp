#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::resistances {

// Steel area of the shank of an insert, A_se; `shank` must be there and a number above zero. Not assessed, with
// the line to write: a bolt of which the plan does not say whether a thread lies in its stressed length, a
// thread without its pitch or with one that leaves nothing of the shank.
// The model says in which units the steps are told.
Outcome<Area> shank_area(const plan::Insert& insert, const tables::HeadedInsertModel& model, Trace& trace);

}  // namespace firstpick::resistances
