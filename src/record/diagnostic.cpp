#include "record/diagnostic.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>

#include <fmt/format.h>

#include "record/utf8.hpp"
#include "units/spelling.hpp"

namespace firstpick {
namespace {

constexpr std::size_t shown_columns = 100;  // of a long line of the file, around the fault
constexpr std::size_t longest_word = 64;    // no word of ours is longer: nothing to suggest
constexpr std::size_t most_listed = 24;

std::string_view line_of(std::string_view text, std::size_t line) {
  for (std::size_t i = 1; i < line; ++i) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

std::size_t columns(std::string_view shown) {  // characters, not bytes
  std::size_t count = 0;
  for (std::size_t at = 0; at < shown.size(); at += utf8_at(shown, at).length) ++count;
  return count;
}

std::string with_spaces(std::string_view text) {  // a tab would move the caret away from its place
  std::string spaced(text);
  std::replace(spaced.begin(), spaced.end(), '\t', ' ');
  return printable(spaced);
}

// The line and, below it, the caret.
std::string excerpt(const Place& place, std::size_t length, std::string_view line) {
  const std::size_t start = std::min(std::max<std::size_t>(place.column, 1) - 1, line.size());
  const std::size_t stop = std::min(line.size(), start + std::max<std::size_t>(length, 1));
  std::size_t first = start > shown_columns / 2 ? start - shown_columns / 2 : 0;
  const bool cut_front = first > 0, cut_back = line.size() > first + shown_columns;
  const std::size_t last = std::min(line.size(), first + shown_columns);

  const std::string front = (cut_front ? "..." : "") + with_spaces(line.substr(first, start - first));
  const std::string marked = with_spaces(line.substr(start, std::min(stop, last) - start));
  const std::string back = stop < last ? with_spaces(line.substr(stop, last - stop)) + (cut_back ? "..." : "")
                           : cut_back  ? "..."
                                       : "";
  return fmt::format("{:>5} | {}{}{}\n      | {}{}\n", place.line, front, marked, back,
                     std::string(columns(front), ' '),
                     std::string(std::max<std::size_t>(1, columns(marked)), '^'));
}

std::optional<std::string_view> nearest(std::string_view given,
                                        const std::vector<std::string_view>& candidates) {
  if (given.size() > longest_word) return {};
  std::optional<std::string_view> best;
  std::size_t fewest = 3;  // at most two edits, and less than half of the word
  for (const std::string_view candidate : candidates) {
    const std::size_t needed = edit_distance(given, candidate, Capitals::do_not_count);
    if (needed < fewest && 2 * needed < std::max(given.size(), candidate.size())) {
      fewest = needed;
      best = candidate;
    }
  }
  return best;
}

}  // namespace

std::string show(const Diagnostic& diagnostic, std::string_view file_text) {
  const Place& place = diagnostic.place;
  std::string shown = printable(diagnostic.file);
  if (place.line > 0) shown += fmt::format(":{}:{}", place.line, std::max<std::size_t>(place.column, 1));
  shown += ": error: " + printable(diagnostic.what) + "\n";
  if (place.line > 0 && !file_text.empty())
    shown += excerpt(place, diagnostic.length, line_of(file_text, place.line));
  if (!diagnostic.help.empty()) shown += "      = help: " + printable(diagnostic.help) + "\n";
  return shown;
}

std::string suggestion(std::string_view given, const std::vector<std::string_view>& candidates) {
  if (candidates.empty()) return {};
  if (candidates.size() == 1) return fmt::format("the only one is '{}'", candidates.front());
  if (const auto meant = nearest(given, candidates)) return fmt::format("did you mean '{}'?", *meant);
  std::string list = "there are:";
  for (std::size_t i = 0; i < std::min(candidates.size(), most_listed); ++i)
    list += fmt::format("{} '{}'", i == 0 ? "" : ",", candidates[i]);
  if (candidates.size() > most_listed) list += fmt::format(" and {} more", candidates.size() - most_listed);
  return list;
}

std::string printable(std::string_view text) {
  std::string shown;
  shown.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    const auto code = static_cast<std::uint32_t>(character.code);
    if (!character.valid)
      shown += fmt::format("\\x{:02X}", code);
    else if (character.code == '\n')
      shown += "\\n";
    else if (character.code == '\t')
      shown += "\\t";
    else if (is_unprintable(character.code))
      shown += code < 0x100 ? fmt::format("\\x{:02X}", code) : fmt::format("\\u{:04X}", code);
    else
      shown += text.substr(at, character.length);
    at += character.length;
  }
  return shown;
}

}  // namespace firstpick
