// Local time and UTC by the zone database of the system: which instant a clock on the wall means, and the
// other way.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace firstpick::clock {

struct Zone {
  std::string name;                   // "America/Chicago", or the offset as written
  std::optional<int> fixed_offset_s;  // of an offset: the same all year
};

// A name of the IANA database, or an offset: "America/Chicago", "-05:00", "Z". Nothing where there is no such
// zone.
std::optional<Zone> zone_named(std::string_view name);

// Every name of the database, in order; empty where the system has none.
std::vector<std::string> zone_names();

// Of the zone's clock from UTC at this instant.
int offset_in_seconds(const Zone& zone, long long seconds_utc);

struct TwiceOnTheClock {  // the clock went back: this hour comes twice
  long long first_utc = 0, second_utc = 0;
};
struct NeverOnTheClock {  // the clock went forward: this hour is skipped
  long long change_utc = 0;
};
using Instant = std::variant<long long, TwiceOnTheClock, NeverOnTheClock>;

// `local_s`: seconds since 1970-01-01T00:00 of the clock on the wall.
Instant instant_of(const Zone& zone, long long local_s);

std::string words_for_moment(const Zone& zone,
                             long long seconds_utc);  // "2026-03-03 07:20 -06:00", no seconds
std::string words_for_clock(const Zone& zone, long long seconds_utc);  // "07:20"
std::string words_for_day(const Zone& zone, long long seconds_utc);    // "2026-03-03"
std::string words_for_offset(int offset_s);                            // "-06:00"
std::string iso_text(const Zone& zone, long long seconds_utc);         // "2026-03-03T07:20:00-06:00"

}  // namespace firstpick::clock
