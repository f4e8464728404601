// Each way a headed insert fails, held against one situation: alone and with the inserts beside it.
#pragma once

#include "checks/mode_table.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Insert `insert` (index in the plan) in one situation. Demand: the force of the insert, or the resultant of its group.
ModeCheck check_mode(Mode mode, const StageFacts& facts, const InsertSituation& situation, std::size_t insert,
                     Trace& trace);

ModeTable mode_table(const StageFacts& facts);

// Worse to the right: missing before anything that passed or failed, then by utilization.
bool less_severe(const ModeCheck& a, const ModeCheck& b);

}  // namespace firstpick::checks
