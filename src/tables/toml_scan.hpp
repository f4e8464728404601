// What the parser must not see: bytes and nestings that toml++ 3.3.0 cannot take, or that a reader cannot see.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace firstpick::tables {

struct Unreadable {
  std::size_t at = 0;  // byte of the text
  std::string what, help;
};

// The first fault at or after byte `from`: invalid UTF-8, a character that cannot be seen, one beyond ASCII outside
// quotes and comments, brackets or dotted keys nested deeper than 32.
std::optional<Unreadable> first_unreadable(std::string_view text, std::size_t from);

// The first quote at or after byte `from` that opens a text and is never closed: on its line, or, three quotes
// together, in the file. For the message where the parser has stopped.
std::optional<Unreadable> first_unclosed_quote(std::string_view text, std::size_t from);

}  // namespace firstpick::tables
