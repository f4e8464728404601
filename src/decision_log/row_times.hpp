// Whether the times of rows follow each other and the clock.
#pragma once

#include <string>

#include "decision_log/decision.hpp"

namespace firstpick::decision_log {

// What somebody should look at in the times of a row: made for another time than it was recorded at, before the row
// above it, or by a clock that had been put back. Empty where there is nothing. `before`: null for the first row.
std::string odd_times(const Row& row, const Row* before);

}  // namespace firstpick::decision_log
