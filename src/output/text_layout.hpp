// Plain text in columns and paragraphs, for a terminal of a given width.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace firstpick::output {

// Columns that `text` takes on a terminal, one for each code point.
std::size_t columns_of(std::string_view text);

// `text` filled with spaces to `width` columns, or cut to it with ".." at the end.
std::string padded(std::string_view text, std::size_t width);
std::string padded_left(std::string_view text, std::size_t width);

// `text` broken at spaces into lines of at most `width` columns; the first line starts with `first`, the others with
// `rest`, both counted. A word that is longer than a line is broken.
std::string paragraph(std::string_view first, std::string_view rest, std::string_view text, std::size_t width);

}  // namespace firstpick::output
