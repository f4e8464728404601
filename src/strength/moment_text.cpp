#include "strength/moment_text.hpp"

#include <chrono>
#include <cstdlib>
#include <optional>

#include <fmt/format.h>

namespace firstpick::strength {

namespace {

constexpr const char* form = "write it as 2026-03-03T07:10:00-05:00 or 2026-03-03T12:10:00Z";

// Reads a text from its front; the place where it stands is that of the next fault.
struct Front {
  std::string_view text;
  std::size_t at = 0;

  bool is(char c) const { return at < text.size() && text[at] == c; }
  bool take(char c) {
    if (!is(c)) return false;
    ++at;
    return true;
  }
  // Exactly `digits` of them, as a number.
  std::optional<int> number(int digits) {
    int value = 0;
    for (int i = 0; i < digits; ++i, ++at) {
      if (at >= text.size() || text[at] < '0' || text[at] > '9') return {};
      value = 10 * value + (text[at] - '0');
    }
    return value;
  }
  bool done() const { return at == text.size(); }
};

std::optional<long long> day_in_seconds(Front& front) {
  const auto year = front.number(4);
  if (!year || !front.take('-')) return {};
  const auto month = front.number(2);
  if (!month || !front.take('-')) return {};
  const auto day_of_month = front.number(2);
  if (!day_of_month || *year < 1900 || *year > 2200) return {};
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day_of_month)}};
  if (!date.ok()) return {};
  return std::chrono::sys_days{date}.time_since_epoch() / std::chrono::seconds{1};
}

std::optional<long long> time_in_seconds(Front& front) {
  const auto hours = front.number(2);
  if (!hours || *hours > 23 || !front.take(':')) return {};
  const auto minutes = front.number(2);
  if (!minutes || *minutes > 59) return {};
  long long seconds = *hours * 3600LL + *minutes * 60LL;
  if (!front.take(':')) return seconds;
  const auto whole = front.number(2);
  if (!whole || *whole > 59) return {};
  if (front.take('.')) {
    if (!front.number(1)) return {};
    while (!front.done() && front.text[front.at] >= '0' && front.text[front.at] <= '9') ++front.at;
  }
  return seconds + *whole;
}

std::optional<int> offset_in_minutes(Front& front) {
  if (front.take('Z') || front.take('z')) return 0;
  const int sign = front.is('-') ? -1 : 1;
  if (!front.take('+') && !front.take('-')) return {};
  const auto hours = front.number(2);
  if (!hours || *hours > 14) return {};
  front.take(':');
  const auto minutes = front.number(2);
  if (!minutes || *minutes > 59) return {};
  return sign * (*hours * 60 + *minutes);
}

QuantityFault fault(const Front& front, const char* what) {
  return {std::min(front.at, front.text.size()), what, form};
}

}  // namespace

std::variant<plan::Timestamp, QuantityFault> moment_of(std::string_view text, bool zone_needed) {
  Front front{text};
  const auto day_s = day_in_seconds(front);
  if (!day_s) return fault(front, "this is no date");
  if (!front.take('T') && !front.take('t') && !front.take(' ')) return fault(front, "a time of day belongs behind the date");
  const auto time_s = time_in_seconds(front);
  if (!time_s) return fault(front, "this is no time of day");

  plan::Timestamp moment{.seconds = *day_s + *time_s};
  if (front.done() && !zone_needed) {
    moment.text = words_for_moment(moment.seconds, 0);
    moment.text.resize(moment.text.size() - 7);  // without the offset that is not there
    return moment;
  }
  front.take(' ');
  const auto offset = offset_in_minutes(front);
  if (!offset) return fault(front, "the zone is missing: without it an hour may count twice or not at all");
  if (!front.done()) return fault(front, "nothing belongs behind the zone");
  moment.seconds -= *offset * 60LL;
  moment.has_offset = true;
  moment.offset_seconds = *offset * 60LL;
  moment.text = words_for_moment(moment.seconds, *offset);
  return moment;
}

std::string words_for_moment(long long seconds_utc, int offset_minutes) {
  const std::chrono::sys_seconds local{std::chrono::seconds{seconds_utc + offset_minutes * 60LL}};
  const auto day = std::chrono::floor<std::chrono::days>(local);
  const std::chrono::year_month_day date{day};
  const auto of_day = (local - day).count();
  std::string text = fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", static_cast<int>(date.year()),
                                 static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                                 of_day / 3600, of_day / 60 % 60);
  if (of_day % 60 != 0) text += fmt::format(":{:02}", of_day % 60);
  return text + fmt::format(" {}{:02}:{:02}", offset_minutes < 0 ? '-' : '+', std::abs(offset_minutes) / 60,
                            std::abs(offset_minutes) % 60);
}

}  // namespace firstpick::strength
