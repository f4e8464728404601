// What ties a piece of the board to its pour, and what of the pour holds it. Each of these was once GO.

#include <limits>

#include "output/board_html.hpp"
#include "output/board_text.hpp"
#include "support/shift_boards.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;

namespace {

const std::string now = "2026-03-03T07:45:00";

const std::string pour = R"(format = 1
mark = "bed 1, pour 4"
[evidence]
specimen = "cylinder 100x200 mm"
cure = "field"
cast = 2026-03-02T14:00:00
tested = 2026-03-03T06:30:00
results = ["23.4 MPa", "24.1 MPa"]
valid_for = "12 h"
)";

const std::string with_log = pour + "[temperature_log]\nfile = \"log.csv\"\n";

// 20 degC and rising, a reading each half hour from the pour on; line 6 is that of 16:00.
std::string log_with(const std::string& line_6 = "2026-03-02T16:00:00-05:00,20.40") {
  std::string log = "time,a [degC]\n";
  for (int i = 0; i <= 19; ++i) {
    char row[64];
    std::snprintf(row, sizeof row, "2026-03-02T%02d:%02d:00-05:00,%.2f\n", 14 + i / 2, 30 * (i % 2), 20.0 + 0.1 * i);
    log += i == 4 ? line_6 + "\n" : row;
  }
  return log;
}

FileTexts files(const std::string& pour_text, const std::string& log = log_with()) {
  return {{"panel.toml", contents_of("docs/demo/wall-panel.toml")},
          {"base.toml", contents_of("docs/demo/manhole-base.toml")},
          {"lid.toml", contents_of("docs/demo/round-lid.toml")},
          {"pour.toml", pour_text},
          {"log.csv", log}};
}

std::string cast_at(const std::string& cast) { return piece_text("panel.toml", "pour.toml", "count = 1\n", cast); }

board::Judged judged(const FileTexts& texts, const std::string& piece = cast_at("2026-03-02T14:00:00"),
                     const tables::Tables& tables = real_tables()) {
  return board_of(shift_text(piece), texts, now, tables).lines.front().judged;
}

}  // namespace

TEST_CASE("board: a pour with its log and nothing against it is GO, and the line tells which pour") {
  const auto go = judged(files(with_log));
  CHECK(go.verdict == Verdict::go);
  CHECK(go.notes.empty());
  CHECK_THAT(go.evidence, Catch::Contains("of 'bed 1, pour 4'"));
}

TEST_CASE("board: a doubt about the log, frost and too much heat hold the piece, with file and line") {
  struct Case {
    std::string line, told;
  };
  for (const auto& [line, told] :
       {Case{"2026-03-02T15:00:00-05:00,20.4", "the temperature log is in doubt, log.csv:6: 2026-03-02 15:00 -05:00 is before"},
        Case{"2026-03-02T15:30:00-05:00,20.4", "the temperature log is in doubt, log.csv:6: 2026-03-02 15:30 -05:00 is the same"},
        Case{"2026-03-02T16:00:00-05:00,999", "the temperature log is in doubt, log.csv:6: 999 degC is no temperature"},
        Case{"2026-03-02T16:00:00-05:00,-5", "the concrete was at or below 0 degC, log.csv:6"},
        Case{"2026-03-02T16:00:00-05:00,61", "the concrete was hotter than 60 degC, log.csv:6"}}) {
    CAPTURE(line);
    const auto texts = files(with_log, log_with(line));
    const auto held = judged(texts);
    CHECK(held.verdict == Verdict::hold);
    CHECK(held.rule == "temperature-log");
    CHECK_THAT(held.reason, Catch::StartsWith(told));
    CHECK(held.expected.kind == board::Expected::Kind::none);

    // By a rule set that notes it, the line goes, and every form of the board says what is wrong.
    tables::Tables lenient = real_tables();
    lenient.rule_sets.at("us").log_doubts.value = tables::LogDoubts::note;
    const auto board = board_of(shift_text(cast_at("2026-03-02T14:00:00")), texts, now, lenient);
    CHECK(board.lines.front().judged.verdict == Verdict::go);
    REQUIRE_FALSE(board.lines.front().judged.notes.empty());
    for (const std::string& form : {output::board_json(board), output::board_csv(board), output::board_html(board)})
      CHECK_THAT(form, Catch::Contains(line.ends_with("-5") || line.ends_with("61") ? "the concrete was" : "log.csv:6"));
    CHECK_THAT(output::board_text(board, {}), Catch::Contains("              ! "));
  }
  std::string gap = log_with();
  for (const std::string time : {"T18:00", "T18:30"}) {
    const std::size_t at = gap.find("2026-03-02" + time);
    gap.erase(at, gap.find('\n', at) + 1 - at);
  }
  CHECK_THAT(judged(files(with_log, gap)).reason, Catch::StartsWith("the temperature log is in doubt, log.csv:10: no reading for"));
}

TEST_CASE("board: a sensor that was colder than the named one is told, and holds no specimens") {
  std::string both = "time,a [degC],b [degC]\n";
  for (int i = 0; i <= 19; ++i) {
    char row[80];
    std::snprintf(row, sizeof row, "2026-03-02T%02d:%02d:00-05:00,%.2f,%.2f\n", 14 + i / 2, 30 * (i % 2), 30.0 + 0.1 * i,
                  12.0 + 0.1 * i);
    both += row;
  }
  const auto told = judged(files(changed(with_log, "file = \"log.csv\"", "file = \"log.csv\"\nsensor = \"a\""), both));
  CHECK(told.verdict == Verdict::go);
  REQUIRE(told.notes.size() == 1);
  CHECK_THAT(told.notes.front(), Catch::StartsWith("the sensor 'b' was colder than 'a'"));
}

TEST_CASE("board: a log in doubt does not hide what fails without any strength") {
  const auto failed = judged(files(with_log, log_with("2026-03-02T16:00:00-05:00,-5")), piece_text("lid.toml", "pour.toml"));
  CHECK(failed.verdict == Verdict::no_go);
  CHECK(failed.rule == "pick-count");
}

TEST_CASE("board: a piece goes only with a time of casting, and with the pour of that time") {
  const std::string without = "[[piece]]\nplan = \"panel.toml\"\npour = \"pour.toml\"\ncount = 1\n";
  const auto untold = judged(files(pour), without);
  CHECK(untold.verdict == Verdict::hold);
  CHECK(untold.rule == "cast-time");
  CHECK_THAT(untold.remedy, Catch::StartsWith("write cast in [[piece]]"));
  CHECK(judged(files(pour), "[[piece]]\nplan = \"base.toml\"\ncount = 1\n").rule == "cast-time");

  CHECK(judged(files(pour), cast_at("2026-03-02T14:00:00")).verdict == Verdict::go);
  CHECK(judged(files(pour), cast_at("2026-03-02T12:00:00")).verdict == Verdict::go);  // as long as a pour lasts
  const auto older = judged(files(pour), cast_at("2026-03-02T11:59:59"));
  CHECK(older.rule == "cast-time");
  CHECK_THAT(older.reason, Catch::Contains("they are of two pours"));
  const auto younger = judged(files(pour), cast_at("2026-03-02T14:00:01"));
  CHECK(younger.verdict == Verdict::hold);
  CHECK(younger.rule == "cast-time");
  CHECK_THAT(younger.reason, Catch::Contains("it is younger"));
  // By its own specimens, and by the log where nobody has broken any.
  CHECK(judged(files(pour), piece_text("base.toml", "", "count = 1\n", "2026-03-02T17:00:00")).rule == "cast-time");
  const auto by_log = files("format = 1\n[temperature_log]\nfile = \"log.csv\"\ncast = 2026-03-02T14:00:00\n");
  CHECK(judged(by_log, cast_at("2026-03-02T15:00:00")).rule == "cast-time");
  CHECK(judged(by_log, cast_at("2026-03-02T13:00:00")).rule == "strength-evidence");
}

TEST_CASE("board: pieces of one plan and pour that were cast at different times are judged each by its own") {
  const auto board = board_of(shift_text(cast_at("2026-03-02T14:00:00") + cast_at("2026-03-02T16:00:00")), files(pour), now);
  REQUIRE(board.lines.size() == 2);
  CHECK(board.lines[0].judged.verdict == Verdict::go);
  CHECK(board.lines[1].judged.rule == "cast-time");
  CHECK(board.lines[0].rests_on.answer != board.lines[1].rests_on.answer);
}

TEST_CASE("board: one pour that is named for several forms is told on each of them") {
  const std::string both = piece_text("panel.toml", "pour.toml", "count = 1\nform = \"bed 1\"\n") +
                           piece_text("panel.toml", "pour.toml", "count = 1\nform = \"bed 9\"\n");
  const auto board = board_of(shift_text(both), files(pour), now);
  for (const board::Line& line : board.lines)
    CHECK(line.judged.notes == std::vector<std::string>{"its pour is named for 2 forms: bed 1; bed 9"});
  const std::string same = piece_text("panel.toml", "pour.toml", "count = 1\nform = \"bed 1\"\n");
  CHECK(board_of(shift_text(same + same), files(pour), now).lines[0].judged.notes.empty());
}

TEST_CASE("board: a piece that may crack, or whose bending is checked elsewhere, says so on its line") {
  FileTexts texts = files(pour);
  texts["plank.toml"] = contents_of("tests/plans/ok/plank-that-may-crack.toml");
  texts["block.toml"] = contents_of("tests/plans/hold/legs-crossed-under-a-beam.toml");
  const auto notes_of = [&](const std::string& plan, const std::string& cast) {
    const auto board = board_of(shift_text(piece_text(plan, "", "count = 1\n", cast)), texts, now);
    for (const std::string& note : board.lines.front().judged.notes)
      CHECK(output::board_html(board).find("<div class=\"note\">! " + note + "</div>") != std::string::npos);
    return board.lines.front().judged.notes;
  };
  CHECK(notes_of("plank.toml", "2026-03-02T16:00:00") == std::vector<std::string>{"may crack, as the engineer states"});
  CHECK(notes_of("block.toml", "2026-03-02T16:30:00") ==
        std::vector<std::string>{"bending checked elsewhere, as the plan states: calculation made for the test"});
}

TEST_CASE("board: results too far apart, too young, or to be used too long are HOLD, a wide range is told") {
  CHECK(judged(files(changed(pour, "24.1 MPa", "44.1 MPa"))).rule == "strength-evidence");
  const auto wide = judged(files(changed(pour, "24.1 MPa", "28 MPa")));
  CHECK(wide.verdict == Verdict::go);
  REQUIRE(wide.notes.size() == 1);
  CHECK_THAT(wide.notes.front(), Catch::StartsWith("the 2 results lie 17.9 % of their mean apart"));
  const auto young = judged(files(changed(pour, "2026-03-02T14:00:00", "2026-03-03T06:25:00")), cast_at("2026-03-03T06:25:00"));
  CHECK(young.rule == "evidence-age");
  CHECK_THAT(young.reason, Catch::StartsWith("the concrete was 5 min old at its test"));
  const auto year = judged(files(changed(pour, "\"12 h\"", "\"8760 h\"")));
  CHECK(year.rule == "evidence-age");
  CHECK_THAT(year.reason, Catch::StartsWith("valid_for is 365 d"));
}

TEST_CASE("board: beside a predicted time every form tells that of a slow mix") {
  const std::string growth = R"(format = 1
[temperature_log]
file = "log.csv"
cast = 2026-03-02T14:00:00
[growth]
curve = "en-1992-1-1, class R"
strength_at_28_days = "50 MPa"
temperature = "20 degC"
)";
  const auto board = board_of(shift_text(cast_at("2026-03-02T14:00:00")), files(growth), now);
  const auto& expected = board.lines.front().judged.expected;
  REQUIRE(expected.kind == board::Expected::Kind::at);
  const std::string slow = slow_words_for(expected, board.zone, board.made_utc_s);
  CHECK_THAT(slow, Catch::StartsWith("a slow mix "));
  CHECK(expected.slow_utc_s.value_or(std::numeric_limits<long long>::max()) > expected.utc_s);
  CHECK_THAT(output::board_html(board), Catch::Contains(slow));
  CHECK_THAT(output::board_csv(board), Catch::Contains(slow));
  CHECK_THAT(output::board_text(board, {.width = 300}), Catch::Contains(slow));
  CHECK_THAT(output::board_json(board), Catch::Contains("\"slow_mixes_known\": true"));
}
