// The top of the card: verdict as word and shape, the piece, the code of the fingerprint.
#pragma once

#include <vector>

#include "card/content.hpp"
#include "card/page.hpp"

namespace firstpick::card {

// Boxes side by side from (x, y), all of one height.
std::vector<Box> heading(const Card& card, double x, double y, double width);

// Four strips of diagonal hatching around a card that is not GO: it cannot be taken for one, in black and
// white too.
std::vector<Box> hatched_frame(double page_width, double page_height, double from_edge, double thick);

}  // namespace firstpick::card
