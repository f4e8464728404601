// What must hold for every board.

#include <algorithm>
#include <map>
#include <random>

#include "support/shift_boards.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using board::Expected;
using checks::Verdict;

namespace {

FileTexts files() {
  FileTexts texts;
  for (const char* name :
       {"wall-panel.toml", "manhole-base.toml", "stair.toml", "round-lid.toml",
        "strength/wall-panel-bed-1.toml", "strength/wall-panel-bed-2.toml", "strength/bay-2.csv"})
    texts[name] = contents_of("docs/demo/" + std::string(name));
  return texts;
}

std::vector<std::string> pieces() {
  std::vector<std::string> all;
  int serial = 0;
  for (const std::string plan :
       {"wall-panel.toml", "manhole-base.toml", "stair.toml", "round-lid.toml", "absent.toml"})
    for (const std::string pour : {"", "strength/wall-panel-bed-1.toml", "strength/wall-panel-bed-2.toml"})
      all.push_back(piece_text(plan, pour, "serials = \"S-" + std::to_string(++serial) + "\"\n",
                                 pour.ends_with("bed-1.toml") ? cast_of_pour : cast_of_own_test));
  return all;
}

std::map<std::string, std::pair<Verdict, std::string>> by_serial(const std::vector<std::string>& list,
                                                                 const std::string& now) {
  std::string text;
  for (const std::string& piece : list) text += piece;
  std::map<std::string, std::pair<Verdict, std::string>> verdicts;
  for (const board::Line& line : board_of(shift_text(text), files(), now).lines)
    verdicts[line.serials.front()] = {line.judged.verdict, line.judged.reason};
  return verdicts;
}

}  // namespace

TEST_CASE("the order and the company of a piece change neither its verdict nor its reason") {
  std::vector<std::string> list = pieces();
  const std::string now = "2026-03-03T07:45:00";
  const auto all = by_serial(list, now);
  REQUIRE(all.size() == list.size());
  std::mt19937_64 random(20260303);
  for (int i = 0; i < 3; ++i) {
    std::ranges::shuffle(list, random);
    CHECK(by_serial(list, now) == all);
  }
  for (const std::string& piece : list)
    for (const auto& [serial, verdict] : by_serial({piece}, now)) {
      CAPTURE(serial);
      CHECK(verdict == all.at(serial));
    }
}

TEST_CASE("the same files at the same time give the same board in every form") {
  const board::Board one = demo_board(), again = demo_board();
  REQUIRE(one.lines.size() == again.lines.size());
  for (std::size_t i = 0; i < one.lines.size(); ++i) {
    CHECK(one.lines[i].position == again.lines[i].position);
    CHECK(one.lines[i].rests_on.answer == again.lines[i].rests_on.answer);
  }
}

TEST_CASE("without a log that grows, a later board never predicts an earlier time, nor turns it into a GO") {
  // The log ends at 07:10; every question comes after it.
  std::optional<long long> told;
  int at = 0, due = 0;
  for (int minute = 7 * 60 + 15; minute <= 17 * 60; minute += 30) {
    char now[32];
    std::snprintf(now, sizeof now, "2026-03-03T%02d:%02d:00", minute / 60, minute % 60);
    const auto board =
        board_of(shift_text(piece_text("wall-panel.toml", "strength/wall-panel-bed-2.toml", "count = 1\n", cast_of_own_test)), files(), now);
    const board::Judged& judged = board.lines.front().judged;
    CAPTURE(now);
    CHECK(judged.verdict == Verdict::hold);
    REQUIRE(judged.expected.kind != Expected::Kind::none);
    CHECK(judged.expected.utc_s >= board.made_utc_s);
    if (told) CHECK(judged.expected.utc_s >= *told);
    told = judged.expected.utc_s;
    ++(judged.expected.kind == Expected::Kind::at ? at : due);
  }
  CHECK(at > 5);
  CHECK(due > 5);
}

TEST_CASE("while readings come in, no board predicts a time that is past") {
  const FileTexts texts = files();
  for (int minute = 6 * 60; minute <= 9 * 60; minute += 15) {
    char now[32];
    std::snprintf(now, sizeof now, "2026-03-03T%02d:%02d:00", minute / 60, minute % 60);
    const auto board =
        board_of(shift_text(piece_text("wall-panel.toml", "strength/wall-panel-bed-2.toml", "count = 1\n", cast_of_own_test)), texts, now);
    CAPTURE(now);
    CHECK(board.lines.front().judged.expected.utc_s >= board.made_utc_s);
  }
}

TEST_CASE("the verdict of the board is that of the check on the plan with the specimens written into it") {
  const std::string with =
      changed(contents_of("docs/demo/wall-panel.toml"),
              "# [concrete.evidence]       # to be written when the cylinders are broken:",
              "[concrete.evidence]\nspecimen = \"cylinder 100x200 mm\"\ncure = \"field\"\ncast = "
              "2026-03-02T14:00:00\n"
              "tested = 2026-03-03T06:30:00\nvalid_for = \"12 h\"\nresults = [\"{} MPa\", \"{} MPa\"]\n");
  for (const std::string strength : {"8", "14", "19.9", "21", "23.4", "29"}) {
    const std::string pour =
        changed(contents_of("docs/demo/strength/wall-panel-bed-1.toml"), "[\"23.4 MPa\", \"24.1 MPa\"]",
                "[\"" + strength + " MPa\", \"" + strength + " MPa\"]");
    FileTexts texts = files();
    texts["pour.toml"] = pour;
    const auto judged =
        board_of(shift_text(piece_text("wall-panel.toml", "pour.toml")), texts, "2026-03-03T07:00:00")
            .lines.front()
            .judged;
    const checks::Report report = report_on("panel.toml", changed(changed(with, "{}", strength), "{}", strength));
    CAPTURE(strength);
    CHECK(judged.verdict == report.verdict);
    CHECK(judged.usable == report.usable_strength);
  }
}
