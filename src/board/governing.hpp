// The one reason of a report that a board has room for.
#pragma once

#include "board/board.hpp"

namespace firstpick::board {

// Writes rule, subject, reason, remedy and the number of other rules that stop the lift. Of what fails the
// gates without a number come first, then the largest utilization; of what is missing the first of the rule
// list. GO: nothing.
void tell_governing(const checks::Report& report, Judged& judged);

}  // namespace firstpick::board
