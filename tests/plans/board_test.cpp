// The whole of `firstpick board`: whose strength counts, what is HOLD, what is predicted, and what a fault
// does.

#include <algorithm>

#include "board/calibrated_time.hpp"
#include "strength_pipeline.hpp"
#include "support/shift_boards.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using board::Expected;
using checks::Verdict;

namespace {

const std::string now = "2026-03-03T07:45:00";

const std::string breaks = R"(format = 1
[evidence]
specimen = "cylinder 100x200 mm"
cure = "field"
cast = 2026-03-02T14:00:00
tested = 2026-03-03T06:30:00
results = ["23.4 MPa", "24.1 MPa"]
valid_for = "12 h"
)";

const std::string growth = R"(format = 1
[temperature_log]
file = "log.csv"
cast = 2026-03-02T14:00:00-05:00
[growth]
curve = "en-1992-1-1, class N"
strength_at_28_days = "50 MPa"
temperature = "20 degC"
)";

// 20 degC from the pour on, a reading each half hour, for ten hours.
std::string cool_log() {
  std::string log = "time,a [degC]\n";
  for (int i = 0; i <= 19; ++i) {
    char row[64];
    std::snprintf(row, sizeof row, "2026-03-02T%02d:%02d:00-05:00,%.2f\n", 14 + i / 2, 30 * (i % 2),
                  20.0 + 0.01 * i);
    log += row;
  }
  return log;
}

// wall-panel.toml has no specimens; with the two of `breaks` it is GO.
FileTexts files() {
  return {{"panel.toml", contents_of("docs/demo/wall-panel.toml")},
          {"base.toml", contents_of("docs/demo/manhole-base.toml")},
          {"lid.toml", contents_of("docs/demo/round-lid.toml")},
          {"breaks.toml", breaks},
          {"growth.toml", growth},
          {"log.csv", cool_log()}};
}

board::Line line_of(const FileTexts& texts, const std::string& piece, const std::string& at = now) {
  const board::Board board = board_of(shift_text(piece), texts, at);
  REQUIRE(board.lines.size() == 1);
  return board.lines.front();
}

}  // namespace

TEST_CASE("board: the plan's own specimens count where no pour is named, as in check") {
  const auto line = line_of(files(), piece_text("base.toml"));
  CHECK(line.judged.verdict == Verdict::go);
  CHECK(line.judged.usable == report_on("docs/demo/manhole-base.toml").usable_strength);
}

TEST_CASE("board: the specimens of the pour carry a plan without any, through the rules of the check") {
  CHECK(line_of(files(), piece_text("panel.toml")).judged.verdict == Verdict::hold);
  const auto line = line_of(files(), piece_text("panel.toml", "breaks.toml"));
  CHECK(line.judged.verdict == Verdict::go);
  CHECK(line.judged.evidence.find("2 field-cured cylinders 100x200 mm") != std::string::npos);

  auto texts = files();
  const auto verdict_with = [&](const std::string& from, const std::string& to) {
    texts["breaks.toml"] = changed(breaks, from, to);
    return line_of(texts, piece_text("panel.toml", "breaks.toml")).judged.verdict;
  };
  CHECK(verdict_with("\"field\"", "\"standard\"") == Verdict::hold);
  CHECK(verdict_with(", \"24.1 MPa\"", "") == Verdict::hold);
  CHECK(verdict_with("\"23.4 MPa\", \"24.1 MPa\"", "\"12 MPa\", \"12.4 MPa\"") == Verdict::no_go);
  CHECK(verdict_with("2026-03-03T06:30:00", "2026-03-03T07:45:00") == Verdict::go);
  CHECK(verdict_with("2026-03-03T06:30:00", "2026-03-03T07:45:01") == Verdict::hold);  // not broken yet
}

TEST_CASE("board: evidence runs out by the clock of the board, whatever the plan says of its lift") {
  const auto at = [&](const std::string& when) {
    return line_of(files(), piece_text("panel.toml", "breaks.toml"), when).judged;
  };
  auto texts = files();
  texts["breaks.toml"] = changed(breaks, "\"12 h\"", "\"2 h\"");
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  CHECK(line_of(texts, piece, "2026-03-03T08:30:00").judged.verdict == Verdict::go);
  CHECK(line_of(texts, piece, "2026-03-03T08:30:01").judged.verdict == Verdict::hold);
  CHECK(line_of(texts, piece, "2026-03-03T08:30:01").judged.rule == "evidence-age");
  CHECK(at("2026-03-03T06:29:59").verdict == Verdict::hold);
}

TEST_CASE("board: a test without a limit on its use carries no GO: the form may have been poured again since") {
  auto texts = files();
  texts["breaks.toml"] = changed(breaks, "valid_for = \"12 h\"\n", "");
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  const auto judged = line_of(texts, piece).judged;
  CHECK(judged.verdict == Verdict::hold);
  CHECK(judged.rule == "evidence-age");
  CHECK_THAT(judged.reason, Catch::Contains("2026-03-03T06:30:00") || Catch::Contains("2026-03-03 06:30"));
  CHECK_THAT(judged.remedy, Catch::Contains("write valid_for in [evidence]"));
  // The file of yesterday's pour, read this morning.
  texts["breaks.toml"] = changed(changed(texts["breaks.toml"], "2026-03-02T14", "2026-03-01T14"), "2026-03-03T06",
                                 "2026-03-02T06");
  CHECK(line_of(texts, piece).judged.verdict == Verdict::hold);
  texts["breaks.toml"] = changed(breaks, "valid_for = \"12 h\"\n", "[growth]\ncurve = \"en-1992-1-1, class N\"\n"
                                 "strength_at_28_days = \"50 MPa\"\ntemperature = \"20 degC\"\n");
  CHECK(line_of(texts, piece).judged.verdict == Verdict::hold);
  CHECK(line_of(texts, piece).judged.expected.kind == Expected::Kind::none);  // no strength is waited for

  // Of the plan's own test the same.
  auto alone = files();
  alone["base.toml"] = changed(alone["base.toml"], "valid_for = \"12 h\"", "");
  CHECK(line_of(alone, piece_text("base.toml")).judged.rule == "evidence-age");
  CHECK_THAT(line_of(alone, piece_text("base.toml")).judged.remedy, Catch::Contains("[concrete.evidence]"));
}

TEST_CASE("board: several sensors in one pour: one is named, and each tells what it has felt") {
  const auto log_of = [](double corner, double core) {
    std::string log = "time,core [degC],corner [degC]\n";
    for (int i = 0; i <= 19; ++i) {
      char row[96];
      std::snprintf(row, sizeof row, "2026-03-02T%02d:%02d:00-05:00,%.2f,%.2f\n", 14 + i / 2, 30 * (i % 2),
                    core + 0.01 * i, corner + 0.01 * i);
      log += row;
    }
    return log;
  };
  auto texts = files();
  texts["log.csv"] = log_of(12.0, 34.0);
  const std::string piece = piece_text("panel.toml", "growth.toml");
  const auto unnamed = line_of(texts, piece).judged;
  CHECK_FALSE(unnamed.checked);
  CHECK_THAT(unnamed.reason, Catch::Contains("log.csv:1:") && Catch::Contains("several sensors, and none is chosen"));

  const auto with = [&](const std::string& sensor) {
    texts["growth.toml"] = changed(growth, "file = \"log.csv\"\n", "file = \"log.csv\"\nsensor = \"" + sensor + "\"\n");
    return line_of(texts, piece).judged;
  };
  const auto corner = with("corner"), core = with("core");
  REQUIRE(corner.expected.kind == Expected::Kind::at);
  REQUIRE(core.expected.kind == Expected::Kind::at);
  CHECK(corner.expected.utc_s > core.expected.utc_s);  // the colder one is later
  texts["log.csv"] = log_of(12.0, 12.0);
  CHECK(with("core").expected.utc_s == corner.expected.utc_s);
  CHECK_THAT(with("middle").reason, Catch::Contains("no sensor 'middle'"));
  // Each of the two has its own faults: those of the other are not its own.
  texts["log.csv"] = changed(log_of(12.0, 34.0), ",34.05,", ",x,");
  CHECK_FALSE(with("core").checked);
}

TEST_CASE("board: pieces of one plan with several pours get what each would get alone") {
  auto texts = files();
  texts["warm.toml"] = changed(growth, "20 degC", "30 degC");
  texts["weak.toml"] = changed(growth, "50 MPa", "38 MPa");
  const std::vector<std::string> pours = {"growth.toml", "warm.toml", "weak.toml", "breaks.toml"};
  std::string all;
  for (const std::string& pour : pours) all += piece_text("panel.toml", pour);
  const auto together = board_of(shift_text(all), texts, now);
  for (const std::string& pour : pours) {
    CAPTURE(pour);
    const auto line = std::ranges::find(together.lines, pour, &board::Line::pour_file);
    REQUIRE(line != together.lines.end());
    const auto alone = line_of(texts, piece_text("panel.toml", pour)).judged;
    CHECK(line->judged.verdict == alone.verdict);
    CHECK(line->judged.expected.utc_s == alone.expected.utc_s);
    CHECK(line->judged.reason == alone.reason);
  }
}

TEST_CASE(
    "board: specimens of plan and pour that are the same are no conflict, by whatever clock they are "
    "written") {
  auto texts = files();
  texts["panel.toml"] = changed(
      texts["panel.toml"], "# [concrete.evidence]       # to be written when the cylinders are broken:",
      "[concrete.evidence]\nspecimen = \"cylinder 100x200 mm\"\ncure = \"field\"\ncast = "
      "2026-03-02T14:00:00\n"
      "tested = 2026-03-03T06:30:00\nresults = [\"23.4 MPa\", \"24.1 MPa\"]\nvalid_for = \"12 h\"\n");
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  CHECK(line_of(texts, piece).judged.verdict == Verdict::go);
  auto utc = texts;
  utc["breaks.toml"] = changed(changed(breaks, "2026-03-02T14:00:00", "2026-03-02T19:00:00Z"),
                               "2026-03-03T06:30:00", "2026-03-03T11:30:00Z");
  CHECK(line_of(utc, piece).judged.verdict == Verdict::go);

  const auto conflict = [&](const std::string& from, const std::string& to, const std::string& key) {
    auto other = texts;
    other["breaks.toml"] = changed(breaks, from, to);
    const auto judged = line_of(other, piece).judged;
    CAPTURE(from, to, judged.reason);
    CHECK(judged.verdict == Verdict::hold);
    CHECK(judged.rule == "pour-evidence");
    CHECK(judged.reason.find("'" + key + "'") != std::string::npos);
  };
  conflict("14:00:00", "14:00:01", "cast");
  conflict("06:30:00", "06:45:00", "tested");
  conflict("24.1", "24.2", "results");
  conflict("100x200 mm", "150x300 mm", "specimen");
  conflict("field", "match", "cure");
  conflict("12 h", "13 h", "valid_for");
}

TEST_CASE(
    "board: specimens of the plan count beside a pour without any only if both were cast at the same time") {
  auto texts = files();
  CHECK(line_of(texts, piece_text("base.toml", "growth.toml")).judged.rule == "pour-evidence");
  const std::string piece = piece_text("base.toml", "growth.toml", "count = 1\n", cast_of_own_test);
  texts["growth.toml"] = changed(growth, "2026-03-02T14:00:00-05:00", "2026-03-02T16:30:00-05:00");
  CHECK(line_of(texts, piece).judged.verdict == Verdict::go);
  texts["growth.toml"] = "format = 1\n";
  CHECK(line_of(texts, piece).judged.rule == "pour-evidence");
}

TEST_CASE("board: a pour that asks for more than the drawing, or tells two times of casting, is HOLD") {
  auto texts = files();
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  texts["breaks.toml"] = breaks + "[required]\nstrength = \"20 MPa\"\n";
  CHECK(line_of(texts, piece).judged.verdict == Verdict::go);
  texts["breaks.toml"] = breaks + "[required]\nstrength = \"20.1 MPa\"\n";
  CHECK(line_of(texts, piece).judged.rule == "pour-evidence");

  std::string zoned = changed(changed(breaks, "2026-03-02T14:00:00", "2026-03-02T14:00:00-05:00"),
                              "2026-03-03T06:30:00", "2026-03-03T06:30:00-05:00");
  const std::string log = "[temperature_log]\nfile = \"log.csv\"\ncast = 2026-03-02T14:00:00-05:00\n";
  texts["breaks.toml"] = zoned + log;
  CHECK(line_of(texts, piece).judged.verdict == Verdict::go);
  texts["breaks.toml"] = zoned + changed(log, "14:00:00", "15:00:00");
  CHECK(line_of(texts, piece).judged.rule == "pour-evidence");
}

TEST_CASE("board: a conflict does not hide what fails without any strength") {
  auto texts = files();
  const auto judged = line_of(texts, piece_text("lid.toml", "breaks.toml")).judged;
  CHECK(judged.verdict == Verdict::no_go);
  CHECK(judged.rule == "pick-count");
}

TEST_CASE("board: maturity carries no lift, even by a rule set that takes it") {
  tables::Tables tables = real_tables();
  tables.rule_sets.at("us").maturity.value = tables::MaturityUse::validated_with_margin;
  FileTexts texts = files();
  texts["growth.toml"] = R"(format = 1
[temperature_log]
file = "log.csv"
cast = 2026-03-02T14:00:00-05:00
[calibration]
mix = "M"
file = "ages.csv"
function = "nurse-saul"
datum = "0 degC"
curve = "logarithmic"
cured_at = "20 degC"
specimen = "cylinder 150x300 mm"
[[calibration.companion]]
tested = 2026-03-02T22:00:00-05:00
results = ["30.46 MPa", "30.46 MPa"]
specimen = "cylinder 150x300 mm"
cure = "field"
)";
  texts["ages.csv"] = "age [h],strength [MPa]\n6,27.9588\n12,33.9794\n24,40\n48,46.0206\n96,52.0412\n";
  const auto board = board_of(shift_text(piece_text("panel.toml", "growth.toml")), texts, now, tables);
  CHECK(board.lines.front().judged.checked);
  CHECK(board.lines.front().judged.verdict == Verdict::hold);
}

TEST_CASE(
    "board: where strength is all that is missing, the growth curve tells the time, and is never a GO") {
  const std::string piece = piece_text("panel.toml", "growth.toml");
  const auto early = line_of(files(), piece);
  CHECK(early.judged.verdict == Verdict::hold);
  REQUIRE(early.judged.expected.kind == Expected::Kind::at);

  // At that time, and at any later one, specimens are due and the lift is no nearer.
  const auto board = board_of(shift_text(piece), files(), now);
  const std::string when = clock::iso_text(board.zone, early.judged.expected.utc_s);
  const auto due = line_of(files(), piece, when).judged;
  CHECK(due.verdict == Verdict::hold);
  CHECK(due.expected.kind == Expected::Kind::due);
  CHECK(words_for(due.expected, board.zone, board.made_utc_s) == "specimens are due");
}

TEST_CASE("board: by a calibration the time is that of its curve, from what the log has measured") {
  // S = 20 + 20 log10(t in days) at 20 degC: 22 MPa at 10^0.1 days = 30.214 h. The log: 9.5 h at 20.095 degC in the mean,
  // datum 0 degC, so 9.5 x 20.095 / 20 = 9.545 h. The other 20.669 h, at 20 degC, from 23:30 on: 20:10:09, told as 20:11.
  const std::string calibrated = growth + R"([calibration]
mix = "M"
file = "ages.csv"
function = "nurse-saul"
datum = "0 degC"
curve = "logarithmic"
cured_at = "20 degC"
specimen = "cylinder 150x300 mm"
)";
  auto texts = files();
  texts["ages.csv"] = "age [h],strength [MPa]\n6,7.9588\n12,13.9794\n24,20\n48,26.0206\n96,32.0412\n";
  const auto read = read_strength_question("growth.toml", calibrated, "", real_tables(),
                                           [&](const std::string& path) { return std::optional(texts.at(path)); });
  REQUIRE(read.faults.empty());
  const auto moment = std::get<plan::Timestamp>(strength::moment_of("2026-03-03T07:45:00-05:00"));
  const auto at = [&](Stress strength) { return board::calibrated_time(read.question, strength, real_tables(), moment); };
  const auto when = std::get<plan::Timestamp>(strength::moment_of("2026-03-03T20:11:00-05:00"));
  CHECK(at(22.0 * MPa)->utc_s == when.seconds);
  CHECK_FALSE(at(32.1 * MPa)->utc_s);               // the oldest specimen had 32.04 MPa
  CHECK(*at(1.0 * MPa)->utc_s < moment.seconds);    // had at the age of the youngest

  // On the board the later of curve and calibration is told, and none where the calibration never comes to it.
  const std::string piece = piece_text("panel.toml", "growth.toml");
  const auto by_curve = line_of(texts, piece).judged.expected;
  texts["growth.toml"] = calibrated;
  CHECK(line_of(texts, piece).judged.expected.utc_s == by_curve.utc_s);  // 20:11 is the earlier one
  texts["ages.csv"] = "age [h],strength [MPa]\n12,5.9794\n24,12\n48,18.0206\n96,24.0412\n";
  const auto later = line_of(texts, piece).judged.expected;
  CHECK(later.curve == "calibration of M");
  CHECK(later.utc_s > by_curve.utc_s);
  texts["ages.csv"] = "age [h],strength [MPa]\n6,37.9588\n12,43.9794\n24,50\n48,56.0206\n96,62.0412\n";
  CHECK(line_of(texts, piece).judged.expected.utc_s == by_curve.utc_s);
  texts["ages.csv"] = "age [h],strength [MPa]\n6,1.9588\n12,3.9794\n24,6\n48,8.0206\n96,10.0412\n";
  CHECK(line_of(texts, piece).judged.expected.kind == Expected::Kind::none);
}

TEST_CASE("board: no time is told where something else is missing too, or specimens contradict the curve") {
  auto texts = files();
  const std::string piece = piece_text("panel.toml", "growth.toml");
  texts["panel.toml"] = changed(texts["panel.toml"], "certificate = \"demo lot 0917\"", "certificate = \"\"");
  CHECK(line_of(texts, piece).judged.expected.kind == Expected::Kind::none);

  texts = files();
  const std::string weak = R"([evidence]
specimen = "cylinder 100x200 mm"
cure = "field"
cast = 2026-03-02T14:00:00-05:00
tested = 2026-03-03T07:30:00-05:00
results = ["11 MPa", "11.2 MPa"]
)";
  texts["growth.toml"] = growth + weak;
  const auto low = line_of(texts, piece);
  CHECK(low.judged.verdict == Verdict::no_go);
  CHECK(low.judged.expected.kind == Expected::Kind::at);
  texts["growth.toml"] = changed(growth, "50 MPa", "90 MPa") + weak;
  CHECK(line_of(texts, piece).judged.verdict == Verdict::no_go);
  CHECK(line_of(texts, piece).judged.expected.kind == Expected::Kind::none);
}

TEST_CASE("board: the predicted strength is one with which the check is GO, and a little less is not") {
  auto texts = files();
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  const auto verdict_at = [&](const std::string& strength) {
    texts["breaks.toml"] = changed(changed(breaks, "23.4 MPa", strength), "24.1 MPa", strength);
    texts["breaks.toml"] = changed(texts["breaks.toml"], "100x200 mm", "150x300 mm");
    return line_of(texts, piece).judged.verdict;
  };
  CHECK(verdict_at("20 MPa") == Verdict::no_go);  // the drawing's strength is not enough for its inserts
  CHECK(verdict_at("30 MPa") == Verdict::go);
}

TEST_CASE("board: a broken plan or pour is HOLD with its first fault, and the board goes on") {
  auto texts = files();
  texts["broken.toml"] = changed(texts["base.toml"], "[concrete]", "[concreet]");
  texts["bad-pour.toml"] = changed(breaks, "results", "resluts");
  const auto board =
      board_of(shift_text(piece_text("broken.toml") + piece_text("base.toml") + piece_text("absent.toml") +
                          piece_text("panel.toml", "bad-pour.toml") + piece_text("panel.toml", "base.toml") +
                          piece_text("panel.toml", "absent.toml")),
               texts, now);
  REQUIRE(board.lines.size() == 6);
  CHECK(board.lines.front().judged.verdict == Verdict::go);
  CHECK(board.lines.front().position == 2);
  std::vector<std::string> reasons;
  for (const board::Line& line : board.lines)
    if (line.judged.verdict != Verdict::go) {
      CHECK(line.judged.verdict == Verdict::hold);
      CHECK_FALSE(line.judged.checked);
      CHECK(line.judged.rule == "file-not-read");
      reasons.push_back(line.judged.reason);
    }
  REQUIRE(reasons.size() == 5);
  CHECK(reasons[0].starts_with("not checked: broken.toml:"));
  CHECK(reasons[1] == "not checked: absent.toml: the file cannot be read");
  CHECK(reasons[2] == "not checked: bad-pour.toml:7:1: [evidence] has no key 'resluts'");
  CHECK(reasons[3] == "not checked: base.toml: this is a plan, a strength file was expected");
  CHECK(reasons[4] == "not checked: absent.toml: the file cannot be read");
}

TEST_CASE("board: nothing goes before the shift or after it") {
  const std::string piece = piece_text("panel.toml", "breaks.toml");
  auto texts = files();
  texts["breaks.toml"] = changed(breaks, "\"12 h\"", "\"48 h\"");
  CHECK(line_of(texts, piece, "2026-03-03T18:00:00").judged.verdict == Verdict::go);
  const auto after = line_of(texts, piece, "2026-03-03T18:00:01").judged;
  CHECK(after.verdict == Verdict::hold);
  CHECK(after.rule == "shift-hours");
  texts["breaks.toml"] = changed(breaks, "2026-03-03T06:30:00", "2026-03-03T05:00:00");
  CHECK(line_of(texts, piece, "2026-03-03T06:00:00").judged.verdict == Verdict::go);
  CHECK(line_of(texts, piece, "2026-03-03T05:59:59").judged.rule == "shift-hours");
}

TEST_CASE("board: the page is old when the shift ends or the evidence of a GO runs out, at the latest") {
  const auto stale_after = [](const std::string& valid_for, const std::string& at, const std::string& piece) {
    auto texts = files();
    texts["breaks.toml"] = changed(breaks, "\"12 h\"", "\"" + valid_for + "\"");
    return board_of(shift_text(piece), texts, at).stale_after_s;
  };
  const std::string panel = piece_text("panel.toml", "breaks.toml");
  CHECK(stale_after("12 h", "2026-03-03T07:45:00", panel) == 300);
  CHECK(stale_after("2 h", "2026-03-03T08:27:00", panel) == 180);
  CHECK(stale_after("2 h", "2026-03-03T08:30:00", panel) == 0);
  CHECK(stale_after("2 h", "2026-03-03T08:31:00", panel) == 300);  // nothing is GO that could run out
  CHECK(stale_after("12 h", "2026-03-03T17:58:00", panel) == 120);
}

TEST_CASE("board: a time in a plan or pour that comes twice, or never, is HOLD until it says its offset") {
  const auto board_on = [&](const std::string& day, const std::string& tested, const std::string& cast) {
    FileTexts texts = files();
    texts["breaks.toml"] =
        changed(changed(breaks, "2026-03-03T06:30:00", tested), "2026-03-02T14:00:00", cast);
    texts["panel.toml"] =
        changed(texts["panel.toml"], "at = 2026-03-03T07:00:00", "at = " + day + "T07:00:00");
    for (std::size_t at; (at = texts["panel.toml"].find("inspected = 2026-01-15")) != std::string::npos;)
      texts["panel.toml"].replace(
          at, 22, "inspected = " + std::string(day == "2026-11-01" ? "2026-10-15" : "2026-01-16"));
    const std::string shift = "format = 1\nplant = \"Yard\"\nzone = \"America/Chicago\"\nstarts = " + day +
                              "T00:00:00\nends = " + day + "T12:00:00\n" +
                              piece_text("panel.toml", "breaks.toml", "count = 1\n", cast);
    return board_of(shift, texts, day + "T06:00:00").lines.front().judged;
  };
  const auto twice = board_on("2026-11-01", "2026-11-01T01:30:00", "2026-10-31T10:00:00");
  CHECK(twice.verdict == Verdict::hold);
  CHECK(twice.rule == "time-in-zone");
  CHECK(board_on("2026-11-01", "2026-11-01T01:30:00-06:00", "2026-10-31T10:00:00-05:00").verdict ==
        Verdict::go);
  const auto never = board_on("2026-03-08", "2026-03-08T02:30:00", "2026-03-07T10:00:00");
  CHECK(never.rule == "time-in-zone");
  CHECK(board_on("2026-03-08", "2026-03-08T03:30:00", "2026-03-07T10:00:00").verdict == Verdict::go);
  // 12 h of validity are 12 h of time: 22:30 the evening before to 11:30 by a clock that went back.
  const auto late = board_on("2026-11-01", "2026-10-31T18:00:01", "2026-10-30T10:00:00");
  CHECK(late.verdict == Verdict::hold);  // 06:00 is 13 h after 18:00, not 12
  CHECK(late.rule == "evidence-age");
  CHECK(board_on("2026-11-01", "2026-10-31T19:00:00", "2026-10-30T10:00:00").verdict == Verdict::go);
}

TEST_CASE("board: --now in the hour that comes twice is a fault") {
  const std::string shift =
      "format = 1\nplant = \"Y\"\nzone = \"America/Chicago\"\nstarts = 2026-11-01T00:00:00\n"
      "ends = 2026-11-01T08:00:00\n" +
      piece_text("base.toml");
  CHECK(std::holds_alternative<std::vector<Diagnostic>>(
      board_answer(shift, files(), "2026-11-01T01:30:00").board));
  CHECK(
      std::holds_alternative<board::Board>(board_answer(shift, files(), "2026-11-01T01:30:00-06:00").board));
}

TEST_CASE("board: each file is read once, and every file is told to the watch") {
  std::map<std::string, int> asked;
  std::string pieces;
  for (int i = 0; i < 40; ++i)
    pieces += piece_text(i % 2 == 0 ? "panel.toml" : "base.toml",
                         i % 2 == 0 ? (i % 4 == 0 ? "breaks.toml" : "growth.toml") : "");
  const auto texts = files();
  const auto answer = make_board(
      {"shift.toml", shift_text(pieces), "", {.seconds = 1772541900, .has_offset = true, .text = {}}},
      real_tables(), [&](const std::string& path) -> std::optional<std::string> {
        ++asked[path];
        return texts.at(path);
      });
  CHECK(asked ==
        std::map<std::string, int>{
            {"panel.toml", 1}, {"base.toml", 1}, {"breaks.toml", 1}, {"growth.toml", 1}, {"log.csv", 1}});
  std::vector<std::string> inputs = answer.inputs;
  std::ranges::sort(inputs);
  CHECK(inputs == std::vector<std::string>{"base.toml", "breaks.toml", "growth.toml", "log.csv", "panel.toml",
                                           "shift.toml"});
}

TEST_CASE("board: the demo shift has all three verdicts, as its comment says") {
  const board::Board board = demo_board();
  CHECK(pieces_with(board, Verdict::go) == 9);
  CHECK(pieces_with(board, Verdict::hold) == 3);
  CHECK(pieces_with(board, Verdict::no_go) == 8);
  CHECK(board.lines[3].judged.expected.kind == Expected::Kind::at);
  CHECK(board.lines[4].judged.rule == "pour-evidence");
}
