// Between the program and the module that sets words and paints pages: Pango, cairo and what they need take a tenth of the
// start of the program, and most commands draw nothing.
#pragma once

#include <string>

#include "card/paint.hpp"
#include "card/typeset.hpp"

namespace firstpick::card {

using PaintPage = void (*)(const Page&, Picture, const std::string& title, Painted&);
using MeasureWords = void (*)(const Words&, double width, Extent&);
inline constexpr const char* paint_function = "firstpick_paint";
inline constexpr const char* extent_function = "firstpick_extent_of";

}  // namespace firstpick::card
