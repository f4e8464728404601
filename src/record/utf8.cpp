#include "record/utf8.hpp"

namespace firstpick {

Utf8 utf8_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at);
  if (first < 0x80) return {first, 1, true};

  const Utf8 invalid{first, 1, false};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return invalid;

  char32_t code = first & (0xFFu >> (length + 1));
  for (std::size_t i = at + 1; i < at + length; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return invalid;
    code = (code << 6) | (byte(i) & 0x3Fu);
  }
  const bool too_long = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (too_long || surrogate || code > 0x10FFFF) return invalid;
  return {code, length, true};
}

bool is_unprintable(char32_t code) {
  const auto between = [code](char32_t low, char32_t high) { return low <= code && code <= high; };
  if (code < 0x7F) return code < 0x20;
  return between(0x7F, 0x9F) || code == 0x061C || code == 0x200B ||  //
         between(0x200E, 0x200F) || between(0x2028, 0x202E) || between(0x2060, 0x206F) || code == 0xFEFF ||
         between(0xFFF9, 0xFFFB) || between(0xE0000, 0xE007F);
}

}  // namespace firstpick
