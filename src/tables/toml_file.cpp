#define TOML_IMPLEMENTATION
#include "tables/toml_file.hpp"

#include <algorithm>
#include <exception>

#include <fmt/format.h>

#include "record/utf8.hpp"
#include "tables/toml_scan.hpp"

namespace firstpick::tables {
namespace {

Place place_of_byte(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  const auto line = static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1;
  const std::size_t last_break = before.rfind('\n');
  return {line, last_break == std::string_view::npos ? at + 1 : at - last_break};
}

// The mark that some editors put in front of UTF-8 text.
std::size_t size_of_mark(std::string_view text) { return text.starts_with("\xEF\xBB\xBF") ? 3 : 0; }

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

// The commonest slip: `length = 8 ft`.
std::string help_for(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return {};
  std::string_view value = line.substr(equals + 1);
  value = value.substr(std::min(value.size(), value.find_first_not_of(" \t")));
  value = value.substr(0, value.find('#'));
  while (!value.empty() && (value.back() == ' ' || value.back() == '\t' || value.back() == '\r'))
    value.remove_suffix(1);
  const bool bare_quantity = !value.empty() && is_digit(value.front()) &&
                             std::any_of(value.begin(), value.end(), is_letter) &&
                             value.find_first_of("\"'[]{}") == std::string_view::npos;
  return bare_quantity ? fmt::format("a quantity is written in quotes: \"{}\"", value) : "";
}

// "Error while parsing key-value pair: cannot redefine ...": the place says the first half.
std::string_view without_preamble(std::string_view description) {
  const std::size_t colon = description.find(": ");
  const bool has_preamble =
      description.starts_with("Error while parsing ") && colon != std::string_view::npos;
  return has_preamble ? description.substr(colon + 2) : description;
}

}  // namespace

Lines::Lines(std::string_view text) : text_(text), starts_{0} {
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n', end + 1))
    starts_.push_back(end + 1);
}

std::string_view Lines::line(std::size_t number) const {
  if (number == 0 || number > starts_.size()) return {};
  const std::string_view line = text_.substr(starts_[number - 1]);
  return line.substr(0, line.find_first_of("\r\n"));
}

Place Lines::place(const toml::source_position& position) const {
  const std::string_view text = line(position.line);
  std::size_t at = position.line == 1 ? size_of_mark(text_) : 0;
  for (std::size_t column = 1; column < position.column && at < text.size(); ++column)
    at += utf8_at(text, at).length;
  return {position.line, at + 1};
}

Place place_in(std::string_view text, const toml::source_position& position) {
  return Lines(text).place(position);
}

std::variant<toml::table, Diagnostic> parse_toml(const std::string& file, std::string_view text) {
  if (text.size() > largest_toml_file)
    return Diagnostic{file, {}, fmt::format("the file has more than {} bytes", largest_toml_file), {}};
  const std::size_t mark = size_of_mark(text);
  if (const auto fault = first_unreadable(text, mark))
    return Diagnostic{file, place_of_byte(text, fault->at), fault->what, fault->help};
  try {
    return toml::parse(text.substr(mark));
  } catch (const toml::parse_error& error) {
    const Lines lines(text);
    const toml::source_position at = error.source().begin;
    if (const auto quote = first_unclosed_quote(text, mark)) {
      const Place place = place_of_byte(text, quote->at);
      if (place.line <= at.line)
        return Diagnostic{file, place, quote->what, quote->help};  // where the parser has stopped
    }
    return Diagnostic{file, lines.place(at), std::string(without_preamble(error.description())),
                      help_for(lines.line(at.line))};
  } catch (const std::exception& error) {  // out of memory
    return Diagnostic{file, {}, fmt::format("the file cannot be read: {}", error.what()), {}};
  }
}

}  // namespace firstpick::tables
