// Each way a headed insert fails, held against one situation: alone and with the inserts beside it.
#pragma once

#include "checks/mode_table.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Insert `insert` (index in the plan) in one situation. Demand: the force of the insert, or the resultant of
// its group.
ModeCheck check_mode(Mode mode, const StageFacts& facts, const InsertSituation& situation, std::size_t insert,
                     Trace& trace);

// The same of every mode, insert and situation at once: each group and row is computed once for all its
// inserts.
ModeTable mode_table(const StageFacts& facts);

}  // namespace firstpick::checks
