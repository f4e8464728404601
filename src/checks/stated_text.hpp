// Whether a text of the plan says anything: blanks, a dash or a question mark name no engineer and no certificate.
#pragma once

#include <algorithm>
#include <string_view>

namespace firstpick::checks {

// It has a letter of any script, or a digit.
inline bool is_stated(std::string_view text) {
  return std::ranges::any_of(text, [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x80 || (byte >= '0' && byte <= '9') || (byte >= 'A' && byte <= 'Z') || (byte >= 'a' && byte <= 'z');
  });
}

}  // namespace firstpick::checks
