// A lift card as one page of boxes.
#pragma once

#include <optional>
#include <string_view>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "card/page.hpp"

namespace firstpick::card {

enum class Paper { a4, letter };

// Everything on one page: the letters shrink until it fits. Where the smallest letters do not do it, texts of
// the small print end with "...", long lists with "and 3 more: see firstpick check". A card that is not GO
// has no drawing, whatever is given.
Page lay_out(const Card& card, const std::optional<Drawing>& hangs, const std::optional<Drawing>& above,
             Paper paper);

}  // namespace firstpick::card
