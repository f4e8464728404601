// The decisions that a board comes to, one for each piece, as the record keeps them.
#pragma once

#include <string>
#include <vector>

#include "board/board.hpp"
#include "decision_log/decision.hpp"

namespace firstpick {

// In the order of the board. `by`: who has them recorded; at what time, by the clock of the computer.
std::vector<decision_log::Decision> decisions_of(const board::Board& board, const std::string& by,
                                                 long long clock_utc_s);

}  // namespace firstpick
