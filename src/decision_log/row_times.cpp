#include "decision_log/row_times.hpp"

#include <charconv>
#include <chrono>
#include <cstdlib>
#include <optional>
#include <string_view>

#include <fmt/format.h>

namespace firstpick::decision_log {

namespace {

constexpr long long together_s = 300;  // a board is recorded when it is made; a slow disk, a clock that was set

std::optional<int> number_at(std::string_view text, std::size_t from, std::size_t digits) {
  if (from + digits > text.size()) return {};
  int value = 0;
  const char* last = text.data() + from + digits;
  const auto [end, error] = std::from_chars(text.data() + from, last, value);
  if (error != std::errc{} || end != last || value < 0) return {};
  return value;
}

// "2026-03-03T07:20:00-06:00" or with Z, as the program writes it, in seconds UTC.
std::optional<long long> instant_of(std::string_view text) {
  const auto year = number_at(text, 0, 4), month = number_at(text, 5, 2), day = number_at(text, 8, 2),
             hours = number_at(text, 11, 2), minutes = number_at(text, 14, 2), seconds = number_at(text, 17, 2);
  if (!year || !month || !day || !hours || !minutes || !seconds) return {};
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) return {};
  const long long days = std::chrono::sys_days{date}.time_since_epoch().count();
  const long long local_s = ((days * 24 + *hours) * 60 + *minutes) * 60 + *seconds;
  const std::string_view zone = text.substr(19);
  if (zone == "Z") return local_s;
  const auto off_hours = number_at(zone, 1, 2), off_minutes = number_at(zone, 4, 2);
  if (zone.size() != 6 || (zone[0] != '+' && zone[0] != '-') || !off_hours || !off_minutes) return {};
  const long long offset_s = (*off_hours * 60LL + *off_minutes) * 60;
  return local_s - (zone[0] == '-' ? -offset_s : offset_s);
}

}  // namespace

std::string odd_times(const Row& row, const Row* before) {
  const auto decided = instant_of(row.decision.decided_at);
  if (!decided) return "its time cannot be read";
  if (row.format >= 2) {
    const auto recorded = instant_of(row.decision.recorded_at);
    if (!recorded) return "the time at which it was recorded cannot be read";
    if (std::abs(*recorded - *decided) > together_s)
      return fmt::format("its board is of {}, and it was recorded at {}", row.decision.decided_at,
                         row.decision.recorded_at);
    if (before)
      if (const auto earlier = instant_of(before->decision.recorded_at); earlier && *recorded < *earlier)
        return fmt::format("it was recorded at {}, before the row above it, {}: the clock was put back",
                           row.decision.recorded_at, before->decision.recorded_at);
  }
  if (before)
    if (const auto earlier = instant_of(before->decision.decided_at); earlier && *decided < *earlier)
      return fmt::format("its board is of {}, before that of the row above it, {}", row.decision.decided_at,
                         before->decision.decided_at);
  return {};
}

}  // namespace firstpick::decision_log
