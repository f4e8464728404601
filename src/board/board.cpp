#include "board/board.hpp"

#include <fmt/format.h>

namespace firstpick::board {

std::size_t pieces_with(const Board& board, Verdict verdict) {
  std::size_t count = 0;
  for (const Line& line : board.lines)
    if (line.judged.verdict == verdict) count += line.count;
  return count;
}

std::string words_for(const Expected& expected, const clock::Zone& zone, long long made_utc_s) {
  switch (expected.kind) {
    case Expected::Kind::none: return {};
    case Expected::Kind::due: return "specimens are due";
    case Expected::Kind::at: {
      const std::string day = clock::words_for_day(zone, expected.utc_s);
      const bool today = day == clock::words_for_day(zone, made_utc_s);
      const bool clear =
          clock::offset_in_seconds(zone, expected.utc_s) == clock::offset_in_seconds(zone, made_utc_s);
      if (today && clear) return "until about " + clock::words_for_clock(zone, expected.utc_s);
      return "until about " + clock::words_for_moment(zone, expected.utc_s);
    }
  }
  return {};
}

std::string slow_words_for(const Expected& expected, const clock::Zone& zone, long long made_utc_s) {
  if (expected.kind != Expected::Kind::at || !expected.has_band) return {};
  if (!expected.slow_utc_s) return "a slow mix never, at this growth";
  constexpr long long a_week_s = 7 * 86400;  // further off a time of day says nothing
  if (*expected.slow_utc_s - made_utc_s > a_week_s) return "a slow mix not within a week";
  const Expected slow{.kind = Expected::Kind::at, .utc_s = *expected.slow_utc_s, .slow_utc_s = {}, .curve = {}};
  return "a slow mix " + words_for(slow, zone, made_utc_s);
}

std::string pieces_in_words(const Line& line) {
  if (line.serials.empty()) return line.count == 1 ? "1 piece" : fmt::format("{} pieces", line.count);
  std::string words;
  for (const std::string& serial : line.serials) words += (words.empty() ? "" : ", ") + serial;
  return words;
}

std::string serial_of(const Line& line, std::size_t piece) {
  return line.serials.empty() ? fmt::format("{} of {}", piece + 1, line.count) : line.serials.at(piece);
}

}  // namespace firstpick::board
