// The order in which the crane should take the lines of a board.
#pragma once

#include <vector>

#include "board/board.hpp"

namespace firstpick::board {

// 1. GO; 2. HOLD that waits for its strength alone, earliest predicted time first; 3. other HOLD; 4. NO-GO, those that
// wait for their strength alone first. Among equals: the smaller priority, then those without one; then the order of
// the shift file. Any order of `lines` comes to the same result.
void put_in_crane_order(std::vector<Line>& lines);

}  // namespace firstpick::board
