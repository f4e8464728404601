#include "output/text_layout.hpp"

#include <algorithm>

namespace firstpick::output {

namespace {

bool starts_code_point(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

// The first `columns` code points of `text`.
std::string_view first_columns(std::string_view text, std::size_t columns) {
  std::size_t end = 0;
  while (end < text.size()) {
    if (starts_code_point(text[end]) && columns-- == 0) break;
    ++end;
  }
  return text.substr(0, end);
}

std::string cut(std::string_view text, std::size_t width) {
  if (columns_of(text) <= width) return std::string(text);
  if (width <= 2) return std::string(first_columns(text, width));
  return std::string(first_columns(text, width - 2)) + "..";
}

}  // namespace

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, starts_code_point));
}

std::string padded(std::string_view text, std::size_t width) {
  std::string line = cut(text, width);
  line.append(width - std::min(width, columns_of(line)), ' ');
  return line;
}

std::string padded_left(std::string_view text, std::size_t width) {
  const std::string line = cut(text, width);
  return std::string(width - std::min(width, columns_of(line)), ' ') + line;
}

std::string paragraph(std::string_view first, std::string_view rest, std::string_view text, std::size_t width) {
  std::string out;
  std::string line(first);
  bool line_has_word = false;
  const auto flush = [&] {
    out += line;
    out += '\n';
    line = rest;
    line_has_word = false;
  };
  while (!text.empty()) {
    const std::size_t start = text.find_first_not_of(' ');
    if (start == std::string_view::npos) break;
    text.remove_prefix(start);
    std::string_view word = text.substr(0, std::min(text.find(' '), text.size()));
    text.remove_prefix(word.size());
    while (!word.empty()) {
      const std::size_t room = width - std::min(width, columns_of(line) + (line_has_word ? 1U : 0U));
      if (columns_of(word) <= room) {
        if (line_has_word) line += ' ';
        line += word;
        word = {};
        line_has_word = true;
      } else if (line_has_word) {
        flush();
      } else {  // a word longer than a whole line
        const std::string_view part = first_columns(word, std::max<std::size_t>(room, 1));
        line += part;
        word.remove_prefix(part.size());
        line_has_word = true;
      }
    }
  }
  flush();
  return out;
}

}  // namespace firstpick::output
