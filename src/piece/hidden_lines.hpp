// Between the program and the module that finds which edges of the piece are hidden.
#pragma once

#include "piece/line_drawing.hpp"

namespace firstpick::piece {

using HiddenLines = std::optional<std::vector<DrawnLine>>;
using FindHiddenLines = void (*)(const Body&, const View&, HiddenLines&);
inline constexpr const char* hidden_lines_function = "firstpick_hidden_lines";

}  // namespace firstpick::piece
