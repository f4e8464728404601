// The sheet as a file. Same sheet, same bytes.
#pragma once

#include <string>

#include "sheet/content.hpp"

namespace firstpick::sheet {

// One file, nothing fetched: style, formulas (MathML) and figures inside. Every text of the plan is escaped.
std::string html(const Sheet& sheet);
// Formulas as text, figures left to the HTML.
std::string markdown(const Sheet& sheet);

}  // namespace firstpick::sheet
