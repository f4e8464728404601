// The answer of `firstpick layout`: for a terminal, and for another program.
#pragma once

#include <cstddef>
#include <string>

#include "layout/report.hpp"

namespace firstpick::output {

// What stands under every answer.
inline constexpr const char* layout_caution =
    "Information, not permission: the engineer of record decides where the inserts are, and local codes govern; the piece is "
    "lifted by a plan that is checked with its own test.";

// `written`: the file that the plan was written to; empty: none.
std::string layout_text(const layout::LayoutReport& report, const std::string& written, std::size_t width);

// SI, the unit in the key.
std::string layout_json(const layout::LayoutReport& report, const std::string& written);

}  // namespace firstpick::output
