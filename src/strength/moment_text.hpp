// Moments of ISO 8601 with their zone, as loggers write them: 2026-03-03T07:10:00-05:00, 2026-03-03 12:10Z.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "plan/plan.hpp"
#include "units/parse.hpp"

namespace firstpick::strength {

// Date, 'T' or one space, hours and minutes, perhaps seconds and a fraction of them (dropped), 'Z' or an offset
// of hours and minutes. `zone_needed` false: the offset may be missing, as on a command line.
// A fault tells the byte of `text` where it stands. Leap seconds and dates outside 1900 to 2200 are refused.
std::variant<plan::Timestamp, QuantityFault> moment_of(std::string_view text, bool zone_needed = true);

// "2026-03-03 07:10 -05:00": seconds where they are not zero.
std::string words_for_moment(long long seconds_utc, int offset_minutes);

}  // namespace firstpick::strength
