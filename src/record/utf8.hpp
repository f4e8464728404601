// Text of strangers, one character at a time.
#pragma once

#include <cstddef>
#include <string_view>

namespace firstpick {

struct Utf8 {
  char32_t code = 0;       // the byte itself where it is not valid
  std::size_t length = 1;  // bytes to step on, at least 1
  bool valid = true;       // shortest form, no surrogate, at most U+10FFFF
};

// The character at byte `at`, which must be inside `text`.
Utf8 utf8_at(std::string_view text, std::size_t at);

// Characters that a terminal obeys instead of showing, or that reorder or hide what a reader sees: controls,
// line and paragraph separators, bidirectional marks, invisible ones. Tab and line feed are among them.
bool is_unprintable(char32_t code);

}  // namespace firstpick
