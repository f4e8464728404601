// The instant that a local time means in a zone.
//
// Source   the zone database. An hour that comes twice (the clock goes back) is never guessed, an hour that is skipped
//          (the clock goes forward) is never moved.

#include <fmt/format.h>

#include "plan/shift_file.hpp"

namespace firstpick::plan {

namespace {

Timestamp in_zone(long long seconds_utc, const clock::Zone& zone) {
  return {.seconds = seconds_utc,
          .has_offset = true,
          .text = clock::words_for_moment(zone, seconds_utc),
          .offset_seconds = clock::offset_in_seconds(zone, seconds_utc)};
}

}  // namespace

std::optional<ZoneFault> put_into_zone(Timestamp& moment, const clock::Zone& zone) {
  if (moment.has_offset) return {};
  const clock::Instant instant = clock::instant_of(zone, moment.seconds);
  if (const auto* twice = std::get_if<clock::TwiceOnTheClock>(&instant))
    return ZoneFault{
        fmt::format("{} comes twice in {}: the clock goes back", moment.text, zone.name),
        fmt::format("write every time of the file with its offset: {} is the first, {} the second",
                    clock::iso_text(zone, twice->first_utc), clock::iso_text(zone, twice->second_utc))};
  if (const auto* never = std::get_if<clock::NeverOnTheClock>(&instant)) {
    const clock::Zone before{{}, clock::offset_in_seconds(zone, never->change_utc - 1)};
    return ZoneFault{
        fmt::format("{} does not come in {}: the clock goes forward", moment.text, zone.name),
        fmt::format("the clock goes from {} to {}", clock::words_for_clock(before, never->change_utc),
                    clock::words_for_clock(zone, never->change_utc))};
  }
  moment = in_zone(std::get<long long>(instant), zone);
  return {};
}

}  // namespace firstpick::plan
