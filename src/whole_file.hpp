// A file of the user's as text.
#pragma once

#include <optional>
#include <string>

namespace firstpick {

// Every byte of a regular file; nothing if it cannot be read.
std::optional<std::string> whole_file(const std::string& path);

// Written beside it under another name and then put in its place, so that no reader sees half of it. Whether
// it was.
bool replace_file(const std::string& path, const std::string& text);

}  // namespace firstpick
