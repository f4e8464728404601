// What of one pour stands against what its specimens or its maturity say: other evidence, the clock, the log, the
// calibration. Each of these was once answered with "reached".

#include <algorithm>

#include "support/strength_answers.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;

namespace {

const std::string pour = R"(format = 1
[required]
strength = "15 MPa"
[temperature_log]
file = "log.csv"
sensor = "a"
cast = 2026-03-02T16:00:00Z
[calibration]
mix = "M"
file = "ages.csv"
function = "nurse-saul"
datum = "0 degC"
curve = "logarithmic"
cured_at = "20 degC"
specimen = "cylinder 150x300 mm"
[[calibration.companion]]
tested = 2026-03-03T00:00:00Z
results = ["16.4 MPa", "16.6 MPa"]
specimen = "cylinder 150x300 mm"
cure = "field"
)";

const std::string specimens = R"([evidence]
specimen = "cylinder 150x300 mm"
cure = "field"
cast = 2026-03-02T16:00:00Z
tested = 2026-03-03T07:30:00Z
results = ["20 MPa", "20.5 MPa"]
valid_for = "6 h"
)";

// A reading each half hour, 40 degC, for 16 h from the pour on; `beside` is added to it at a second sensor.
NamedFiles files(double beside_degC = 5.0) {
  std::string log = "time,a [degC],b [degC]\n";
  for (int i = 0; i <= 32; ++i) {
    const int minutes = 16 * 60 + 30 * i;
    char row[80];
    std::snprintf(row, sizeof row, "2026-03-%02dT%02d:%02d:00Z,%.3f,%.3f\n", 2 + minutes / 1440, minutes / 60 % 24,
                  minutes % 60, 40.0 + 0.001 * i, 40.0 + beside_degC + 0.001 * i);
    log += row;
  }
  return {{"log.csv", log},
          {"ages.csv", "age [h],strength [MPa]\n6,7.9588\n12,13.9794\n24,20\n48,26.0206\n96,32.0412\n"}};
}

std::string with(std::string text, const std::string& from, const std::string& to) {
  REQUIRE(text.find(from) != std::string::npos);
  return text.replace(text.find(from), from.size(), to);
}

tables::Tables that_take_maturity() {
  tables::Tables tables = us_tables();
  tables.rule_sets.at("us").maturity.value = tables::MaturityUse::validated_with_margin;
  return tables;
}

checks::StrengthReport report(const std::string& text, const std::string& now = "2026-03-03T08:00:00Z",
                              const NamedFiles& named = files(), const tables::Tables& tables = that_take_maturity()) {
  return report_of(answer_to(text, named, tables, now));
}

std::string held(const checks::StrengthReport& report) {
  CHECK(report.verdict == Verdict::hold);
  return report.needed.at(0).why;
}

}  // namespace

TEST_CASE("strength: the pour of these tests is reached by its maturity, and by its specimens") {
  CHECK(report(pour).verdict == Verdict::go);
  CHECK(report(pour).needed.at(0).rests_on == "maturity");
  CHECK(report(pour + specimens).verdict == Verdict::go);
  CHECK(report(pour + specimens).needed.at(0).rests_on == "specimens");
}

TEST_CASE("strength: specimens that were broken and do not count are never passed over for maturity") {
  const std::string stands = "; maturity does not stand in for specimens that were broken";
  CHECK(held(report(pour + with(specimens, "\"20 MPa\", \"20.5 MPa\"", "\"8 MPa\""))) ==
        "1 of the 2 results that the rule set asks for" + stands);
  CHECK_THAT(held(report(pour + with(with(specimens, "20 MPa", "8 MPa"), "20.5 MPa", "8.1 MPa"), "2026-03-03T13:30:01Z")),
             Catch::Contains("was to be used for 6 h"));
  CHECK_THAT(held(report(pour + with(specimens, "\"field\"", "\"standard\""))), Catch::EndsWith(stands));
  CHECK_THAT(held(report(pour + with(specimens, "specimen = \"cylinder 150x300 mm\"\n", ""))), Catch::EndsWith(stands));
  CHECK(report(pour + with(with(specimens, "20 MPa", "8 MPa"), "20.5 MPa", "8.1 MPa")).verdict == Verdict::no_go);
}

TEST_CASE("strength: specimens and log that name different times of casting are HOLD") {
  CHECK(held(report(pour + with(specimens, "2026-03-02T16", "2026-03-01T16"))) ==
        "the specimens and the temperature log of the pour name different times of casting; maturity does not stand in "
        "for specimens that were broken");
}

TEST_CASE("strength: a log in doubt, frost and too much heat hold the specimens too, with the line, by the rule set") {
  const auto changed_log = [&](const std::string& from, const std::string& to) {
    NamedFiles named = files();
    named["log.csv"] = with(named["log.csv"], from, to);
    return named;
  };
  const std::string late = "2026-03-02T20:00:00Z,40.008";
  struct Case {
    std::string to, told;
  };
  for (const auto& [to, told] :
       {Case{"2026-03-02T19:00:00Z,40.008", "the temperature log is in doubt, log.csv:10: 2026-03-02 19:00 +00:00 is before"},
        Case{"2026-03-02T19:30:00Z,40.008", "the temperature log is in doubt, log.csv:10: 2026-03-02 19:30 +00:00 is the same"},
        Case{"2026-03-02T20:00:00Z,140", "the temperature log is in doubt, log.csv:10: 140 degC is no temperature"},
        Case{"2026-03-02T20:00:00Z,-0.1", "the concrete was at or below 0 degC, log.csv:10"},
        Case{"2026-03-02T20:00:00Z,60.1", "the concrete was hotter than 60 degC, log.csv:10"}}) {
    CAPTURE(to);
    const NamedFiles named = changed_log(late, to);
    CHECK_THAT(held(report(pour + specimens, "2026-03-03T08:00:00Z", named)), Catch::StartsWith(told));
    CHECK_THAT(held(report(pour, "2026-03-03T08:00:00Z", named)), Catch::Contains(told));
    tables::Tables lenient = that_take_maturity();
    lenient.rule_sets.at("us").log_doubts.value = tables::LogDoubts::note;
    const auto noted = report(pour + specimens, "2026-03-03T08:00:00Z", named, lenient);
    CHECK(noted.verdict == Verdict::go);
    CHECK(noted.doubts.size() + noted.notes.size() > 0);
    CHECK(report(pour, "2026-03-03T08:00:00Z", named, lenient).verdict == Verdict::hold);  // maturity never
  }
  NamedFiles gap = files();
  for (const std::string time : {"T20:00", "T20:30"}) {
    std::string& log = gap["log.csv"];
    const std::size_t at = log.find("2026-03-02" + time);
    log.erase(at, log.find('\n', at) + 1 - at);
  }
  CHECK_THAT(held(report(pour + specimens, "2026-03-03T08:00:00Z", gap)),
             Catch::StartsWith("the temperature log is in doubt, log.csv:10: no reading for"));
}

TEST_CASE("strength: a lift whose time has passed is asked for now") {
  const std::string past = with(specimens, "valid_for = \"6 h\"", "valid_for = \"6 h\"");
  const std::string at = with(pour, "strength = \"15 MPa\"", "strength = \"15 MPa\"\nat = 2026-03-03T07:45:00Z");
  const auto soon = report(at + past, "2026-03-03T08:00:00Z");
  CHECK(soon.verdict == Verdict::go);
  CHECK(std::ranges::count(soon.notes, "the lift was to be at 2026-03-03 07:45 +00:00, which has passed: it is asked for now") ==
        1);
  CHECK_THAT(held(report(at + past, "2026-03-09T06:00:00Z")), Catch::Contains("was to be used for 6 h"));
  // By the clock on the wall where the file has no zone and the question has one.
  const std::string local = R"(format = 1
[required]
strength = "15 MPa"
at = 2026-03-03T07:45:00
[evidence]
specimen = "cylinder 150x300 mm"
cure = "field"
cast = 2026-03-02T16:00:00
tested = 2026-03-03T07:30:00
results = ["20 MPa", "20.5 MPa"]
valid_for = "6 h"
)";
  CHECK(report(local, "2026-03-03T13:30:00-05:00").verdict == Verdict::go);
  CHECK_THAT(held(report(local, "2026-03-03T13:30:01-05:00")), Catch::Contains("was to be used for 6 h"));
}

TEST_CASE("strength: tests and companions after the time of the question do not count yet") {
  CHECK_THAT(held(report(pour + specimens, "2026-03-03T07:29:59Z")),
             Catch::StartsWith("the test of 2026-03-03 07:30 +00:00 is after the time of the question"));
  const std::string local_at = with(pour + specimens, "strength = \"15 MPa\"", "strength = \"15 MPa\"\nat = 2026-03-03T09:00:00Z");
  CHECK_THAT(held(report(local_at, "2026-03-03T07:29:59Z")), Catch::StartsWith("the test of"));
  const auto early = report(pour, "2026-03-02T23:59:00Z");
  CHECK_THAT(held(early), Catch::Contains("the companions of 2026-03-03 00:00 +00:00 are after the time of the question"));
}

TEST_CASE("strength: a log needs a question with its zone, and a reading of now") {
  CHECK_THAT(held(report(pour, "2026-03-03T08:00:00")), Catch::Contains("the time of the question has no zone"));
  CHECK_THAT(held(report(pour + specimens, "2026-03-03T08:00:00")),
             Catch::StartsWith("the time of the question has no zone, and the test has one"));
  CHECK_THAT(report(pour + specimens, "2026-03-03T08:00:00").needed.at(0).remedy, Catch::Contains("--now 2026"));
  CHECK(report(pour, "2026-03-03T09:00:00Z").verdict == Verdict::go);  // the last reading is 1 h old
  CHECK_THAT(held(report(pour, "2026-03-03T09:00:01Z")), Catch::Contains("the last reading is 1 h 1 min old, more than 1 h"));
  CHECK_THAT(held(report(pour, "2027-03-03T08:00:00Z")), Catch::Contains("the last reading is"));
}

TEST_CASE("strength: results too far apart, too young, or to be used too long are HOLD whatever of them counts") {
  CHECK_THAT(held(report(pour + with(specimens, "20.5 MPa", "28 MPa"))), Catch::StartsWith("the results lie 33.4 % of their mean apart"));
  CHECK(report(pour + with(specimens, "20.5 MPa", "27 MPa")).verdict == Verdict::go);
  CHECK_THAT(held(report(pour + with(specimens, "2026-03-03T07:30", "2026-03-02T16:05"))),
             Catch::StartsWith("the concrete was 5 min old at its test"));
  CHECK_THAT(held(report(pour + with(specimens, "6 h", "8760 h"))),
             Catch::StartsWith("valid_for is 365 d, and the rule set lets a test be used for 7 d at most"));
}

TEST_CASE("strength: the coldest sensor governs: another that was colder, or is dead, holds what maturity says") {
  CHECK(report(pour, "2026-03-03T08:00:00Z", files(-0.9)).verdict == Verdict::go);
  CHECK_THAT(held(report(pour, "2026-03-03T08:00:00Z", files(-35.0))), Catch::Contains("the sensor 'b' was colder than 'a'"));
  CHECK_THAT(held(report(pour, "2026-03-03T08:00:00Z", files(-90.0))),
             Catch::Contains("the sensor 'b' beside the one that is read: -50 degC is no temperature of concrete"));
  // Specimens do not rest on the sensor that is named; on a log in doubt they do.
  CHECK(report(pour + specimens, "2026-03-03T08:00:00Z", files(-35.0)).verdict == Verdict::go);
}

TEST_CASE("strength: weak, wild or distant companions, and a calibration that scatters, are HOLD") {
  CHECK_THAT(held(report(with(pour, "\"16.4 MPa\", \"16.6 MPa\"", "\"8 MPa\", \"25 MPa\""))),
             Catch::Contains("of their mean apart, more than 8.00 %"));
  // 4 h at 40 degC: 8 h at 20 degC, 10.46 MPa; the estimate of 16 h is 22.5 MPa.
  CHECK_THAT(held(report(with(with(pour, "2026-03-03T00:00", "2026-03-02T20:00"), "\"16.4 MPa\", \"16.6 MPa\"",
                              "\"10.4 MPa\", \"10.5 MPa\""))),
             Catch::Contains("the latest companions have 46."));
  NamedFiles noisy = files();
  noisy["ages.csv"] = "age [h],strength [MPa]\n6,12\n12,9\n24,26\n48,20\n96,36\n";
  const auto scattered = report(with(pour, "\"16.4 MPa\", \"16.6 MPa\"", "\"17.4 MPa\", \"17.6 MPa\""),
                                "2026-03-03T08:00:00Z", noisy);
  CHECK_THAT(held(scattered), Catch::Contains("the standard deviation of the calibration is"));
}
