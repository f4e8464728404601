#pragma once

#include <optional>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::resistances {

// The concrete that there is for the embedment of an insert: its thickness behind the insert. The model says in which unit the
// step is told.
Outcome<Resistance<Length>> embedment_room(const plan::Insert& insert, const piece::InsertSite& site,
                                           const tables::HeadedInsertModel& model, Trace& trace);

// What the plan asks for: the effective embedment. Not assessed: not in the plan, not finite and above zero.
Outcome<Demand<Length>> embedment(const plan::Insert& insert);

// Why the concrete below the flat face of an insert is not what the formulas take it for, straight down from the edges of the
// face; nothing where it is.
std::optional<NotAssessed> not_whole_below(const piece::InsertSite& site);

}  // namespace firstpick::resistances
