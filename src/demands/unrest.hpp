// Why a piece would not stay as it hangs, in words of the trade.
#pragma once

#include "demands/hanging.hpp"

namespace firstpick::demands {

// The forces balance in `hanging`, but a small move costs nothing or gains.
NotAssessed would_move(const HungPiece& piece, const Hanging& hanging);

// A beam moves in the small move that costs nothing or gains.
NotAssessed would_turn(const Carrier& beam);

// One of the two, by the body that moves most in that move: 0 the piece, 1 + k carrier k. A sheave moves with
// what hangs on its rope.
NotAssessed would_stir(const HungPiece& piece, const Hanging& hanging, std::size_t loosest);

// A beam or sheave whose lower legs hang slack, so that it finds no rest of its own.
NotAssessed hangs_idle(const Carrier& carrier);

// The piece rests more than a right angle away from its upright.
NotAssessed rolled_over(const HungPiece& piece, const Hanging& hanging);

}  // namespace firstpick::demands
