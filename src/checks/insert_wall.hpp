// The tension that the pull of one insert brings to the wall or slab it sits in.
#pragma once

#include <optional>

#include "checks/piece_bending.hpp"
#include "record/outcome.hpp"

namespace firstpick::checks {

// The bending of the whole piece has the pulls of all inserts in it: a panel; a ring or box that is computed.
bool pulls_are_in_its_bending(const StageFacts& facts);

// No other member holds the concrete of the insert.
bool bends_with_the_piece(const StageFacts& facts, std::size_t insert);

// Over all situations; nothing: no member holds the concrete of the insert, or nothing pulls.
Outcome<std::optional<WallTension>> insert_wall_tension(const StageFacts& facts, std::size_t insert, Trace& trace);

}  // namespace firstpick::checks
