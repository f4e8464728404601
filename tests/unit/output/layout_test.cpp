// What `firstpick layout` prints, of a report made by hand.

#include <catch2/catch.hpp>

#include <sstream>

#include <nlohmann/json.hpp>

#include "output/layout.hpp"

using namespace firstpick;
using namespace firstpick::layout;

namespace {

LayoutReport made() {
  const Use breakout{0, "insert-breakout", "A2", 0.914, checks::Result::pass};
  const Use after{0, "piece-cracking", "SL-1", 0.5041, checks::Result::pass};
  LayoutReport report{.file = "p.toml", .mark = "SL-1", .rules = "us", .fingerprint = std::string(64, 'a'),
                      .units = UnitSystem::si, .moved = true, .before = breakout, .after = after};
  report.not_of_position = Use{0, "crane-overload", "bay", 0.3, checks::Result::pass};
  StageLine line{.kind = plan::StageKind::strip, .rigging = "legs", .strength = {false, true, 20.0 * MPa}};
  line.rules = {{{0, "piece-cracking", "SL-1", 0.4, checks::Result::pass}, after},
                {breakout, {0, "insert-breakout", "A1", 0.45, checks::Result::pass}}};
  line.not_mended = {{0, "insert-certificate", "A1", checks::Result::missing, {}, "no certificate is named"}};
  report.stages = {line};
  report.inserts = {{"A1", {0.5 * m, 1.0 * m, 0.2 * m}, {0.8 * m, 1.0 * m, 0.2 * m}, 0.3 * m}};
  report.legs = {{"legs", "A1", 2.0 * m, 2.5 * m}};
  report.verdict_after = checks::Verdict::hold;
  return report;
}

}  // namespace

TEST_CASE("layout: before and after, with rule and subject, what moved, what the verdicts are") {
  const std::string text = output::layout_text(made(), "moved.toml", 80);
  for (const char* part : {"0.92  strip: insert-breakout, A2", "0.51  strip: piece-cracking, SL-1",
                           "No move changes strip: crane-overload, bay: 0.30.", "leg to A1: 2500 mm, was 2000 mm",
                           "300 mm", "the 20.0 MPa that", "? insert-certificate, A1: no certificate is named",
                           "Written to moved.toml."}) {
    CAPTURE(part, text);
    CHECK(text.find(part) != std::string::npos);
  }
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 80);
}

TEST_CASE("layout: nothing better, and a plan that lies outside what it allows, are said") {
  LayoutReport report = made();
  report.moved = false, report.drawn_is_allowed = false;
  report.inserts.clear(), report.legs.clear();
  const std::string text = output::layout_text(report, "", 80);
  CHECK(text.find("The picks stay where they are") != std::string::npos);
  CHECK(text.find("not within what its [layout] allows") != std::string::npos);
  CHECK(text.find("Written to") == std::string::npos);
}

TEST_CASE("layout: the JSON holds the same numbers, unrounded") {
  const auto json = nlohmann::json::parse(output::layout_json(made(), ""));
  REQUIRE(json["cautions"].size() == 1);
  CHECK(json["cautions"][0] == output::layout_caution);
  CHECK(json["before"]["utilization"] == 0.914);
  CHECK(json["after"]["rule"] == "piece-cracking");
  CHECK(json["inserts"][0]["after_m"][0] == 0.8);
  CHECK(json["inserts"][0]["by_m"] == 0.3);
  CHECK(json["stages"][0]["strength_is"] == "required");
  CHECK(json["written"].is_null());
}
