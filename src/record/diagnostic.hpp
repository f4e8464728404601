// A fault in a file of the user's, told as file:line:column: what is wrong, what was expected, did you mean.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace firstpick {

// A place in a file; lines and columns count from 1 (columns in bytes); 0 = the file as a whole.
struct Place {
  std::size_t line = 0;
  std::size_t column = 0;
};

struct Diagnostic {
  std::string file;
  Place place;
  std::string what;       // "[rigging] has no key 'sling_angel'"
  std::string help;       // "did you mean 'sling_angle'?"; may be empty
  std::size_t length = 1; // how many bytes of the line the caret marks
};

// "plan.toml:14:1: error: ..." with the line of the file and a caret where `file_text` is given.
// Control characters and bidirectional overrides in any text are shown escaped.
std::string show(const Diagnostic& diagnostic, std::string_view file_text = {});

// Did-you-mean ladder: the only candidate; one within two edits; else the list of what exists.
std::string suggestion(std::string_view given, const std::vector<std::string_view>& candidates);

// `text` safe for a terminal or a log: control characters, invalid UTF-8 and bidirectional overrides escaped.
std::string printable(std::string_view text);

}  // namespace firstpick
