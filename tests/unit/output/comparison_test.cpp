// Several rule sets side by side: the words and the JSON of comparisons made by hand.

#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "output/comparison.hpp"
#include "output/text_layout.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;
using comparison::Comparison;

namespace {

using Json = nlohmann::ordered_json;
using Keys = std::vector<std::string>;

checks::Report report_by(const std::string& rules, Verdict verdict) {
  checks::Report report = hand_made_report();
  report.rules = rules;
  report.verdict = verdict;
  report.stages.front().verdict = verdict;
  report.cautions = {"a caution of both", "a caution of " + rules};
  return report;
}

Comparison compared(std::vector<checks::Report> reports) {
  Comparison all{.reports = std::move(reports), .named_by_plan = "us", .worst = Verdict::go, .contrasts = {}};
  for (const checks::Report& report : all.reports) all.worst = std::max(all.worst, report.verdict);
  for (std::size_t i = 1; i < all.reports.size(); ++i) {
    comparison::StageContrast stage{.first = all.reports.front().verdict, .other = all.reports[i].verdict};
    const checks::Finding finding = hand_made_finding("sling-overload", "A1", checks::Result::pass);
    comparison::Pair pair{finding.rule, finding.subject, finding, finding,
                          comparison::Ratios{1.5, 1.2, 0.8, 1.0, comparison::Part::nominal}};
    stage.pairs = {pair};
    stage.explained = {{pair, {{"dynamic factor", "1.2", "1.3", 0.87, 1.0875}}}};
    stage.differences = {{"gear-inspection", {"chain", "hook"}, checks::Result::pass, {}, "", "", {"time between examinations"}}};
    stage.turned = {{"factor on inserts", "4", "3", Verdict::hold}};
    all.contrasts.push_back({i, {stage}});
  }
  return all;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = text.find('\n', from);
    lines.push_back(text.substr(from, to - from));
    from = to == std::string::npos ? text.size() : to + 1;
  }
  return lines;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

Keys keys(const Json& object) {
  Keys all;
  for (const auto& [key, value] : object.items()) all.push_back(key);
  return all;
}

}  // namespace

TEST_CASE("no line of a comparison is wider than the terminal, however long the names of rule sets are") {
  for (const std::string& other : {std::string("eu"), std::string("a-rule-set-of-the-north-yard-of-2026")})
    for (const std::size_t width : {60U, 80U, 100U}) {
      const std::string text =
          output::comparison_text(compared({report_by("us", Verdict::go), report_by(other, Verdict::no_go)}), {.width = width});
      for (const std::string& line : lines_of(text)) {
        CAPTURE(other, width, line);
        CHECK(output::columns_of(line) <= width);
      }
      CHECK(holds(text, other));
    }
}

TEST_CASE("GO by one and NO-GO by another: both verdicts, the worst first, and that nobody may pick") {
  const std::string text =
      output::comparison_text(compared({report_by("us", Verdict::go), report_by("eu", Verdict::no_go)}), {});
  CHECK(text.starts_with("(x) NO-GO  the worst of several\n"));
  for (const char* part : {"(+) GO  by us", "(x) NO-GO  by eu", "do not agree: GO by us, NO-GO by eu",
                           "The GO by us is no permission to lift.", "engineer of record chooses the code"})
    CHECK(holds(text, part));
}

TEST_CASE("every caution stands in it: that of all once, that of one under its name") {
  const std::string text =
      output::comparison_text(compared({report_by("us", Verdict::go), report_by("eu", Verdict::go)}), {});
  const std::string cautions = text.substr(text.find("\nCautions\n"));
  CHECK(cautions == "\nCautions\n  - a caution of both\n  by us:\n  - a caution of us\n  by eu:\n  - a caution of eu\n");
}

TEST_CASE("the numbers of the split and of each assumption are told, and the largest part is marked") {
  const std::string text =
      output::comparison_text(compared({report_by("us", Verdict::go), report_by("eu", Verdict::no_go)}), {});
  for (const char* part : {"x 1.50", "held, before the factor (largest)", "x 0.80", "0.87 (x 1.09) dynamic factor. us: 1.2; eu: 1.3",
                           "gear-inspection, chain, hook: pass by us; nothing by eu", "made by: time between examinations",
                           "HOLD with factor on inserts. us: 4; eu: 3"}) {
    CAPTURE(part, text);
    CHECK(holds(text, part));
  }
}

TEST_CASE("three rule sets: each other one against the first") {
  const std::string text = output::comparison_text(
      compared({report_by("us", Verdict::go), report_by("eu", Verdict::hold), report_by("north", Verdict::go)}), {});
  CHECK(holds(text, "\neu against us\n"));
  CHECK(holds(text, "\nnorth against us\n"));
}

TEST_CASE("texts of strangers bring no order for the terminal") {
  checks::Report hostile = hostile_report();
  hostile.stages.front().findings.clear();
  Comparison all = compared({hostile, report_by("eu", Verdict::go)});
  all.named_by_plan = hostile_text;
  all.contrasts.front().stages.front().differences.front().subjects = {hostile_text};
  all.contrasts.front().stages.front().explained.front().effects.front().first = hostile_text;
  const std::string text = output::comparison_text(all, {});
  for (const unsigned char byte : text) CHECK((byte >= 0x20 || byte == '\n'));
  CHECK_FALSE(holds(text, "\xE2\x80\xAE"));
}

TEST_CASE("the keys of the JSON are those of format 1, in this order, and the reports are those of a single check") {
  const Comparison all = compared({report_by("us", Verdict::go), report_by("eu", Verdict::no_go)});
  const Json json = Json::parse(output::comparison_json({{"slab.toml", &all, nullptr}}));
  CHECK(keys(json) == Keys{"format", "program", "plan", "compared", "named_by_plan", "verdict", "agreed", "statement", "reports",
                           "contrasts", "cautions"});
  CHECK(keys(json["plan"]) == Keys{"file", "mark", "revision"});
  CHECK(json["compared"] == Json({"us", "eu"}));
  CHECK(json["verdict"] == "NO-GO");
  CHECK(json["agreed"] == false);
  CHECK(json["reports"].size() == 2);
  CHECK(json["reports"][1]["rules"] == "eu");
  CHECK(json["reports"][1]["stages"][0]["findings"].size() == 4);
  CHECK(json["cautions"] == Json({"a caution of both", "a caution of us", "a caution of eu"}));
  CHECK(keys(json["contrasts"][0]) == Keys{"first", "other", "stages"});
  const Json& stage = json["contrasts"][0]["stages"][0];
  CHECK(keys(stage) == Keys{"kind", "first", "other", "pairs", "deciding", "other_verdicts", "told_otherwise"});
  CHECK(keys(stage["pairs"][0]) == Keys{"rule", "subject", "first", "other", "ratios"});
  CHECK(keys(stage["pairs"][0]["first"]) == Keys{"outcome", "demand", "nominal", "factor", "capacity", "utilization", "unit",
                                                 "limit", "clause", "text", "remedy", "situation", "together"});
  CHECK(stage["pairs"][0]["ratios"] == Json({{"use", 1.5}, {"demand", 1.2}, {"nominal", 0.8}, {"factor", 1.0}, {"largest", "nominal"}}));
  CHECK(stage["deciding"][0]["assumptions"][0]["utilization"] == 0.87);
  CHECK(stage["told_otherwise"][0]["other"].is_null());
}

TEST_CASE("a plan that could not be read is an element with its faults") {
  const Comparison all = compared({report_by("us", Verdict::go), report_by("eu", Verdict::go)});
  const std::vector<Diagnostic> faults = {{.file = "bad.toml", .place = {3, 1}, .what = "no such key", .help = ""}};
  const Json json = Json::parse(output::comparison_json({{"slab.toml", &all, nullptr}, {"bad.toml", nullptr, &faults}}));
  REQUIRE(json.size() == 2);
  CHECK(json[1]["errors"][0]["line"] == 3);
  CHECK_FALSE(json[1].contains("verdict"));
}
