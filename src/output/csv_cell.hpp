// Text of strangers as one cell of a CSV file that a person will open in a spreadsheet.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace firstpick::output {

// Control characters and bidirectional overrides escaped as printable() does; an apostrophe in front of what
// a spreadsheet would take for a formula (= + - @, also behind spaces, also in full width); quoted where it
// needs to be (RFC 4180).
std::string csv_cell(std::string_view text);

// The cells with commas between them, and a line end (CR LF, RFC 4180).
std::string csv_row(const std::vector<std::string>& cells);

}  // namespace firstpick::output
