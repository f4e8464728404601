#include "clock/zone.hpp"

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <stdexcept>

#include <date/tz.h>
#include <fmt/format.h>

namespace firstpick::clock {

namespace {

using std::chrono::seconds;

// Null where there is no database, or no such name in it.
const date::time_zone* find(std::string_view name) {
  try {
    const auto& zones = date::get_tzdb().zones;
    const auto found = std::ranges::find(
        zones, name, [](const date::time_zone& zone) { return std::string_view(zone.name()); });
    return found == zones.end() ? nullptr : &*found;
  } catch (const std::runtime_error&) {
    return nullptr;
  }
}

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return {};
    value = 10 * value + (c - '0');
  }
  return value;
}

// "-05:00", "+05:30", "Z".
std::optional<int> offset_of(std::string_view text) {
  if (text == "Z") return 0;
  if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':') return {};
  const auto hours = digits(text.substr(1, 2)), minutes = digits(text.substr(4, 2));
  if (!hours || !minutes || *hours > 14 || *minutes > 59) return {};
  return (text[0] == '-' ? -1 : 1) * (*hours * 3600 + *minutes * 60);
}

struct OnTheWall {
  int year;
  unsigned month, day;
  long long hour, minute, second;
};

OnTheWall on_the_wall(const Zone& zone, long long seconds_utc) {
  const std::chrono::sys_seconds local{seconds{seconds_utc + offset_in_seconds(zone, seconds_utc)}};
  const auto day = std::chrono::floor<std::chrono::days>(local);
  const std::chrono::year_month_day date{day};
  const auto of_day = (local - day).count();
  return {static_cast<int>(date.year()),
          static_cast<unsigned>(date.month()),
          static_cast<unsigned>(date.day()),
          of_day / 3600,
          of_day / 60 % 60,
          of_day % 60};
}

}  // namespace

std::optional<Zone> zone_named(std::string_view name) {
  if (const auto offset = offset_of(name)) return Zone{std::string(name), offset};
  if (find(name)) return Zone{std::string(name), {}};
  return {};
}

std::vector<std::string> zone_names() {
  std::vector<std::string> names;
  try {
    for (const date::time_zone& zone : date::get_tzdb().zones) names.push_back(zone.name());
  } catch (const std::runtime_error&) {
    return {};
  }
  std::ranges::sort(names);
  return names;
}

int offset_in_seconds(const Zone& zone, long long seconds_utc) {
  if (zone.fixed_offset_s) return *zone.fixed_offset_s;
  const date::time_zone* found = find(zone.name);
  if (!found) throw std::runtime_error("the zone database has no zone " + zone.name);
  return static_cast<int>(found->get_info(date::sys_seconds{seconds{seconds_utc}}).offset.count());
}

Instant instant_of(const Zone& zone, long long local_s) {
  if (zone.fixed_offset_s) return local_s - *zone.fixed_offset_s;
  const date::time_zone* found = find(zone.name);
  if (!found) throw std::runtime_error("the zone database has no zone " + zone.name);
  const date::local_info info = found->get_info(date::local_seconds{seconds{local_s}});
  const auto utc = [&](const date::sys_info& by) { return local_s - by.offset.count(); };
  switch (info.result) {
    case date::local_info::ambiguous: return TwiceOnTheClock{utc(info.first), utc(info.second)};
    case date::local_info::nonexistent: return NeverOnTheClock{info.first.end.time_since_epoch().count()};
    default: return utc(info.first);
  }
}

std::string words_for_offset(int offset_s) {
  return fmt::format("{}{:02}:{:02}", offset_s < 0 ? '-' : '+', std::abs(offset_s) / 3600,
                     std::abs(offset_s) / 60 % 60);
}

std::string words_for_clock(const Zone& zone, long long seconds_utc) {
  const OnTheWall at = on_the_wall(zone, seconds_utc);
  return fmt::format("{:02}:{:02}", at.hour, at.minute);
}

std::string words_for_day(const Zone& zone, long long seconds_utc) {
  const OnTheWall at = on_the_wall(zone, seconds_utc);
  return fmt::format("{:04}-{:02}-{:02}", at.year, at.month, at.day);
}

std::string words_for_moment(const Zone& zone, long long seconds_utc) {
  return fmt::format("{} {} {}", words_for_day(zone, seconds_utc), words_for_clock(zone, seconds_utc),
                     words_for_offset(offset_in_seconds(zone, seconds_utc)));
}

std::string iso_text(const Zone& zone, long long seconds_utc) {
  return fmt::format("{}T{}:{:02}{}", words_for_day(zone, seconds_utc), words_for_clock(zone, seconds_utc),
                     on_the_wall(zone, seconds_utc).second,
                     words_for_offset(offset_in_seconds(zone, seconds_utc)));
}

}  // namespace firstpick::clock
