// A lift card as one page of boxes.
#pragma once

#include <optional>
#include <string_view>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "card/page.hpp"

namespace firstpick::card {

enum class Paper { a4, letter };

// Everything on one page. What an operator reads at arm's length (steps, stops, ticks, limits) keeps 8 points as long as
// anything else can give way: first table, gear and small print get smaller, then the lists of the small print are
// named or counted instead of told, then all letters shrink, none below 6 points; at last long lists end with "and 3 more: see firstpick check".
// Standing cautions are never cut. A card that is not GO has no drawing, whatever is given.
Page lay_out(const Card& card, const std::optional<Drawing>& hangs, const std::optional<Drawing>& above,
             Paper paper);

// Points of the letters of steps, stops and ticks at scale one, and below which they go only where nothing else is left.
inline constexpr double letters_of_steps = 8.4, legible_at_arms_length = 8.0;
inline constexpr double smallest_letters = 6.0;  // below which nothing goes, but for cautions that fill the page by themselves

}  // namespace firstpick::card
