// Local time and UTC. Source of the changes: 15 U.S.C. 260a, second Sunday of March and first Sunday of
// November at 2:00 local time (2026: 8 March, 1 November); the offsets are those of the zones' standard and
// advanced time.

#include "clock/zone.hpp"

#include <chrono>

#include <catch2/catch.hpp>

using namespace firstpick::clock;

namespace {

long long local(int month, int day, int hour, int minute, int year = 2026) {
  using namespace std::chrono;
  return sys_days{std::chrono::year{year} / month / day}.time_since_epoch() / seconds{1} + hour * 3600LL +
         minute * 60LL;
}

Zone zone(const char* name) {
  const auto found = zone_named(name);
  REQUIRE(found);
  return *found;
}

}  // namespace

TEST_CASE("a local time is one instant on every other day") {
  const Zone chicago = zone("America/Chicago");
  CHECK(std::get<long long>(instant_of(chicago, local(3, 3, 7, 20))) == local(3, 3, 13, 20));
  CHECK(std::get<long long>(instant_of(chicago, local(7, 3, 7, 20))) == local(7, 3, 12, 20));
  CHECK(words_for_moment(chicago, local(3, 3, 13, 20)) == "2026-03-03 07:20 -06:00");
  CHECK(iso_text(chicago, local(7, 3, 12, 20) + 5) == "2026-07-03T07:20:05-05:00");
}

TEST_CASE("the hour that is skipped has no instant, the minutes beside it have") {
  const Zone chicago = zone("America/Chicago");
  CHECK(std::get<long long>(instant_of(chicago, local(3, 8, 1, 59))) == local(3, 8, 7, 59));
  CHECK(std::get<NeverOnTheClock>(instant_of(chicago, local(3, 8, 2, 0))).change_utc == local(3, 8, 8, 0));
  CHECK(std::holds_alternative<NeverOnTheClock>(instant_of(chicago, local(3, 8, 2, 59))));
  CHECK(std::get<long long>(instant_of(chicago, local(3, 8, 3, 0))) == local(3, 8, 8, 0));
}

TEST_CASE("the hour that comes twice has two instants an hour apart, the minutes beside it one") {
  const Zone chicago = zone("America/Chicago");
  CHECK(std::get<long long>(instant_of(chicago, local(11, 1, 0, 59))) == local(11, 1, 5, 59));
  for (const int minute : {0, 59}) {
    const auto twice = std::get<TwiceOnTheClock>(instant_of(chicago, local(11, 1, 1, minute)));
    CHECK(twice.first_utc == local(11, 1, 6, minute));
    CHECK(twice.second_utc == local(11, 1, 7, minute));
    CHECK(words_for_clock(chicago, twice.first_utc) == words_for_clock(chicago, twice.second_utc));
    CHECK(words_for_moment(chicago, twice.first_utc) != words_for_moment(chicago, twice.second_utc));
  }
  CHECK(std::get<long long>(instant_of(chicago, local(11, 1, 2, 0))) == local(11, 1, 8, 0));
}

TEST_CASE("a clock that changes by half an hour, and one that is off by quarters") {
  const Zone lord_howe = zone("Australia/Lord_Howe");
  const auto twice = std::get<TwiceOnTheClock>(instant_of(lord_howe, local(4, 5, 1, 45)));
  CHECK(twice.second_utc - twice.first_utc == 1800);
  CHECK(words_for_offset(offset_in_seconds(zone("Asia/Kathmandu"), local(3, 3, 0, 0))) == "+05:45");
}

TEST_CASE("an offset is a zone without changes") {
  CHECK(std::get<long long>(instant_of(zone("-05:00"), local(3, 8, 2, 30))) == local(3, 8, 7, 30));
  CHECK(std::get<long long>(instant_of(zone("Z"), local(3, 8, 2, 30))) == local(3, 8, 2, 30));
  CHECK(words_for_moment(zone("-03:30"), local(3, 3, 0, 0)) == "2026-03-02 20:30 -03:30");
}

TEST_CASE("what is no zone is none") {
  for (const char* name : {"", "Chicago", "america/chicago", "../../etc/passwd", "/etc/localtime", "-5:00",
                           "-15:00", "+05:60", "+0a:00", "America/Chicago ", "z"}) {
    CAPTURE(name);
    CHECK_FALSE(zone_named(name));
  }
  CHECK(zone_names().size() > 300);
}

TEST_CASE("there and back, every quarter of an hour of a year") {
  const Zone chicago = zone("America/Chicago");
  for (long long utc = local(1, 1, 0, 0); utc < local(1, 1, 0, 0, 2027); utc += 900) {
    const Instant back = instant_of(chicago, utc + offset_in_seconds(chicago, utc));
    if (const auto* one = std::get_if<long long>(&back)) {
      if (*one != utc) FAIL_CHECK(words_for_moment(chicago, utc));
      continue;
    }
    const auto* twice = std::get_if<TwiceOnTheClock>(&back);
    if (!twice || (twice->first_utc != utc && twice->second_utc != utc))
      FAIL_CHECK(words_for_moment(chicago, utc));
  }
}
