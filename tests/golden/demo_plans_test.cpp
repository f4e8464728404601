// Has the wording changed? The terminal text and the JSON of the demo plans, byte for byte.
//
// After a change that is meant: sh tests/golden/update.sh, then read the difference before it is committed. Fingerprints
// change with every byte of plan, tables and version and are kept out: 0 stands for each of their digits.

#include <catch2/catch.hpp>

#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "card/lift_card.hpp"
#include "compare_pipeline.hpp"
#include "layout_pipeline.hpp"
#include "output/comparison.hpp"
#include "output/json.hpp"
#include "output/layout.hpp"
#include "output/strength_json.hpp"
#include "output/strength_text.hpp"
#include "output/terminal.hpp"
#include "support/plan_files.hpp"
#include "support/strength_answers.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::string without_fingerprint(const std::string& text) {
  static const std::regex fingerprint("(fingerprint\"?:? \"?)[0-9a-f]{16,64}");
  std::string masked;
  std::size_t done = 0;
  for (std::sregex_iterator found(text.begin(), text.end(), fingerprint), end; found != end; ++found) {
    const auto start = static_cast<std::size_t>(found->position()), head = static_cast<std::size_t>(found->length(1));
    masked += text.substr(done, start - done + head);
    masked += std::string(static_cast<std::size_t>(found->length()) - head, '0');
    done = start + static_cast<std::size_t>(found->length());
  }
  return masked + text.substr(done);
}

std::string line_at(const std::string& text, std::size_t position) {
  const std::size_t before = position == 0 ? std::string::npos : text.rfind('\n', position - 1);
  const std::size_t start = before == std::string::npos ? 0 : before + 1;
  return text.substr(start, text.find('\n', start) - start);
}

// Empty where the two are the same; else the first line that is not, with its number.
std::string first_difference(const std::string& expected, const std::string& now) {
  std::size_t at = 0, line = 1;
  while (at < expected.size() && at < now.size() && expected[at] == now[at]) line += expected[at++] == '\n' ? 1U : 0U;
  if (at == expected.size() && at == now.size()) return {};
  return "line " + std::to_string(line) + "\n  was: " + line_at(expected, at) + "\n  now: " + line_at(now, at) +
         "\n  meant? sh tests/golden/update.sh, and read the difference";
}

std::string golden_file(const std::string& plan, const char* ending) {
  return "tests/golden/" + std::filesystem::path(plan).stem().string() + ending;
}

}  // namespace

TEST_CASE("the terminal text of the demo plans is as it was") {
  REQUIRE(demo_plans().size() >= 4);
  for (const std::string& plan : demo_plans()) {
    CAPTURE(plan);
    const std::string now = without_fingerprint(output::terminal(report_on(plan), {}));
    CHECK(first_difference(contents_of(golden_file(plan, ".txt")), now) == "");
  }
}

TEST_CASE("what firstpick layout says of its demo is as it was") {
  const std::string plan = "docs/demo/layout/wall-panel.toml";
  const auto answer = layout_of_plan(plan, contents_of(plan), {}, real_tables());
  REQUIRE(std::holds_alternative<layout::LayoutReport>(answer));
  const auto& report = std::get<layout::LayoutReport>(answer);
  CHECK(first_difference(contents_of("tests/golden/wall-panel.layout.txt"),
                         without_fingerprint(output::layout_text(report, "", 80))) == "");
  CHECK(first_difference(contents_of("tests/golden/wall-panel.layout.json"),
                         without_fingerprint(output::layout_json(report, ""))) == "");
}

TEST_CASE("what firstpick check says of the culvert by two rule sets is as it was") {
  const std::string plan = "docs/demo/box-culvert.toml";
  const auto answer = compare_plan(plan, contents_of(plan), {"us", "eu"}, real_tables());
  REQUIRE(std::holds_alternative<comparison::Comparison>(answer));
  const auto& compared = std::get<comparison::Comparison>(answer);
  CHECK(first_difference(contents_of("tests/golden/box-culvert.us-eu.txt"),
                         without_fingerprint(output::comparison_text(compared, {}))) == "");
  CHECK(first_difference(contents_of("tests/golden/box-culvert.us-eu.json"),
                         without_fingerprint(output::comparison_json({{plan, &compared, nullptr}}))) == "");
}

TEST_CASE("the example in the README is what the program says") {
  const std::string page = contents_of("README.md"), start = "$ build/bin/firstpick check docs/demo/wall-panel.toml\n";
  const std::size_t from = page.find(start), end = page.find("...\n```", from);
  REQUIRE(from != std::string::npos);
  REQUIRE(end != std::string::npos);
  const std::string shown = without_fingerprint(page.substr(from + start.size(), end - from - start.size()));
  CHECK(shown.size() > 1000);
  CHECK(first_difference(shown, contents_of("tests/golden/wall-panel.txt").substr(0, shown.size())) == "");
}

TEST_CASE("the JSON of the demo plans is as it was") {
  for (const std::string& plan : demo_plans()) {
    CAPTURE(plan);
    const checks::Report report = report_on(plan);
    const std::string now = without_fingerprint(output::json({{plan, &report, nullptr}}));
    CHECK(first_difference(contents_of(golden_file(plan, ".json")), now) == "");
  }
}

TEST_CASE("the words and boxes of the lift cards of the demo plans are as they were") {
  for (const std::string& plan : demo_plans()) {
    const CheckedPlan checked = checked_plan(plan);
    for (const auto& [paper, ending] : {std::pair{card::Paper::a4, ".card.txt"}, {card::Paper::letter, ".card-letter.txt"}}) {
      CAPTURE(plan, ending);
      const std::string now =
          without_fingerprint(card::box_list(card::lift_card(checked.plan, checked.body, checked.report, 0, paper)));
      CHECK(first_difference(contents_of(golden_file(plan, ending)), now) == "");
    }
  }
}

TEST_CASE("the text and the JSON of the demo pours are as they were") {
  const std::string folder = "docs/demo/strength/";
  NamedFiles named;
  for (const char* csv : {"bay-2.csv", "p5-07.csv", "season.csv"}) named[csv] = contents_of(folder + csv);
  for (const std::string pour : {"box-culvert-breaks", "box-culvert-pour", "wall-panel-bed-1", "wall-panel-bed-2"}) {
    CAPTURE(pour);
    const std::string file = folder + pour + ".toml";
    const auto report =
        report_of(answer_to(contents_of(file), named, us_tables(), "2026-03-03T07:20:00-05:00", file));
    CHECK(first_difference(contents_of(golden_file(file, ".strength.txt")),
                           without_fingerprint(output::strength_text(report, {}, false))) == "");
    CHECK(first_difference(contents_of(golden_file(file, ".strength.json")),
                           without_fingerprint(output::strength_json(report))) == "");
    const bool broken = pour == "box-culvert-breaks" || pour == "wall-panel-bed-1";
    CHECK(report.verdict == (broken ? checks::Verdict::go : checks::Verdict::hold));
  }
}

TEST_CASE("the verdicts of the demo plans are those that their comments promise") {
  CHECK(report_on("docs/demo/manhole-base.toml").verdict == checks::Verdict::go);
  CHECK(report_on("docs/demo/panel-turned.toml").verdict == checks::Verdict::go);
  CHECK(report_on("docs/demo/wall-panel.toml").verdict == checks::Verdict::hold);
  CHECK(report_on("docs/demo/box-culvert.toml").verdict == checks::Verdict::no_go);
  CHECK(report_on("docs/demo/round-lid.toml").verdict == checks::Verdict::no_go);
  CHECK(report_on("docs/demo/stair.toml").verdict == checks::Verdict::go);
}

TEST_CASE("no load of the round lid comes to one half of its limit: gates alone stop it") {
  const std::set<std::string_view> loads{"insert-rating", "sling-overload", "hardware-overload", "hardware-factor",
                                         "crane-overload"};
  const checks::Report lid = report_on("docs/demo/round-lid.toml");
  std::set<std::string_view> told, failed;
  for (const checks::Finding& finding : lid.stages.front().findings) {
    if (finding.result == checks::Result::fail) failed.insert(finding.rule);
    if (!loads.contains(finding.rule)) continue;
    told.insert(finding.rule);
    CAPTURE(finding.rule, finding.subject);
    CHECK(finding.utilization.value() < 0.5);
  }
  CHECK(told == loads);
  CHECK(failed == std::set<std::string_view>{"clutch-mismatch", "pick-count", "roll-stability"});
}

TEST_CASE("the comparison finds a changed letter, a missing line and one too many") {
  CHECK(first_difference("a\nb\n", "a\nb\n") == "");
  CHECK(first_difference("a\nb\n", "a\nc\n").starts_with("line 2\n  was: b\n  now: c\n"));
  CHECK(first_difference("a\nb\n", "a\n").starts_with("line 2\n  was: b\n"));
  CHECK(first_difference("a\n", "a\nb\n").starts_with("line 2\n"));
  CHECK(without_fingerprint("x fingerprint 0123456789abcdef\n") == "x fingerprint 0000000000000000\n");
  CHECK(without_fingerprint("\"fingerprint\": \"" + std::string(64, 'f') + "\"") ==
        "\"fingerprint\": \"" + std::string(64, '0') + "\"");
}
