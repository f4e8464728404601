// The answer of `firstpick layout`: for a terminal, and for another program.
#pragma once

#include <cstddef>
#include <string>

#include "layout/report.hpp"

namespace firstpick::output {

// `written`: the file that the plan was written to; empty: none.
std::string layout_text(const layout::LayoutReport& report, const std::string& written, std::size_t width);

// SI, the unit in the key.
std::string layout_json(const layout::LayoutReport& report, const std::string& written);

}  // namespace firstpick::output
