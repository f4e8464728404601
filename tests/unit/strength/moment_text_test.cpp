#include "strength/moment_text.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;

namespace {

plan::Timestamp moment(const std::string& text, bool zone_needed = true) {
  const auto read = strength::moment_of(text, zone_needed);
  if (const auto* fault = std::get_if<QuantityFault>(&read)) FAIL(text << ": " << fault->what);
  return std::get<plan::Timestamp>(read);
}

}  // namespace

TEST_CASE("the same moment in several zones") {
  const long long noon = moment("2026-03-03T12:00:00Z").seconds;
  CHECK(noon == 1772539200);
  for (const char* text : {"2026-03-03T07:00:00-05:00", "2026-03-03 07:00-0500", "2026-03-03T17:45:00.25+05:45",
                           "2026-03-03 12:00:00 Z", "2026-03-03T12:00+00:00"}) {
    CAPTURE(text);
    CHECK(moment(text).seconds == noon);
    CHECK(moment(text).has_offset);
  }
}

TEST_CASE("a moment in words keeps its own zone") {
  CHECK(moment("2026-03-03T07:10:30-05:00").text == "2026-03-03 07:10:30 -05:00");
  CHECK(moment("2026-03-03T17:45Z").text == "2026-03-03 17:45 +00:00");
  CHECK(moment("2026-03-03T07:10", false).text == "2026-03-03 07:10");
  CHECK_FALSE(moment("2026-03-03T07:10", false).has_offset);
}

TEST_CASE("what is no moment is a fault at its place") {
  struct Row {
    std::string text;
    std::size_t at;
  };
  for (const Row& row : {Row{"", 0}, Row{"2026", 4}, Row{"2026-13-01T00:00Z", 10}, Row{"2025-02-29T00:00Z", 10},
                         Row{"2026-03-03", 10}, Row{"2026-03-03T24:00Z", 13}, Row{"2026-03-03T12:60Z", 16},
                         Row{"2026-03-03T12:00:60Z", 19}, Row{"2026-03-03T12:00", 16},
                         Row{"2026-03-03T12:00+15:00", 19}, Row{"2026-03-03T12:00Zx", 17},
                         Row{"03/03/2026 12:00Z", 2}, Row{"1800-01-01T00:00Z", 10}}) {
    CAPTURE(row.text);
    const auto read = strength::moment_of(row.text);
    REQUIRE(std::holds_alternative<QuantityFault>(read));
    CHECK(std::get<QuantityFault>(read).at == row.at);
    CHECK_FALSE(std::get<QuantityFault>(read).what.empty());
  }
}
