// The terminal text of every plan of the repository: nothing that stops the lift left out, nothing wider than the terminal.

#include <catch2/catch.hpp>

#include <sstream>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "output/json.hpp"
#include "output/terminal.hpp"
#include "output/text_layout.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// The letters alone, so that a sentence is found however its lines were broken.
std::string letters_of(const std::string& text) {
  std::string letters;
  for (const char c : text)
    if (c != ' ' && c != '\n') letters += c;
  return letters;
}

std::vector<checks::Finding> stopping_or_noted(const checks::Report& report) {
  std::vector<checks::Finding> all;
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& finding : stage.findings)
      if (finding.result != checks::Result::pass) all.push_back(finding);
  return all;
}

// What fails by numbers is told once for each rule, at its largest utilization; everything else speaks for itself.
const checks::Finding& worst_of_its_rule(const checks::Report& report, const checks::Finding& finding) {
  const checks::Finding* worst = &finding;
  if (finding.result != checks::Result::fail || !finding.utilization) return finding;
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& other : stage.findings)
      if (other.rule == finding.rule && other.result == finding.result && other.utilization > worst->utilization)
        worst = &other;
  return *worst;
}

// `worst` itself, or another of its rule that is as bad to rounding: equal legs make equal findings.
bool is_told(const checks::Report& report, const checks::Finding& worst, const std::string& text) {
  const auto stands = [&](const checks::Finding& f) {
    return text.find(letters_of(f.text)) != std::string::npos && text.find(letters_of(f.remedy)) != std::string::npos;
  };
  if (stands(worst)) return true;
  if (worst.result != checks::Result::fail || !worst.utilization) return false;
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& other : stage.findings)
      if (other.rule == worst.rule && other.result == worst.result && other.utilization &&
          *other.utilization >= *worst.utilization * (1.0 - 1e-9) && stands(other))
        return true;
  return false;
}

// No line is wider than 60, 80 or 100 columns, and no byte is an order to the terminal.
void check_width(const checks::Report& report) {
  for (const std::size_t width : {60U, 80U, 100U})
    for (const bool everything : {false, true}) {
      const std::string text = output::terminal(
          report, {.width = width, .colour = false, .all_findings = everything, .steps = everything});
      CHECK(text.find('\x1b') == std::string::npos);
      std::istringstream in(text);
      for (std::string line; std::getline(in, line);) {
        CAPTURE(width, line);
        CHECK(output::columns_of(line) <= width);
      }
    }
}

// Every missing and note is told with its text and remedy, every fail at the worst of its rule.
void check_told(const checks::Report& report) {
  const std::string text = letters_of(output::terminal(report, {}));
  for (const checks::Finding& finding : stopping_or_noted(report)) {
    const checks::Finding& told = worst_of_its_rule(report, finding);
    CAPTURE(finding.rule, finding.subject, told.text, told.remedy);
    CHECK(is_told(report, told, text));
    CHECK(text.find(letters_of(finding.subject)) != std::string::npos);
  }
  REQUIRE_FALSE(report.cautions.empty());
  REQUIRE_FALSE(report.not_checked.empty());
  for (const std::string& caution : report.cautions) CHECK(text.find(letters_of(caution)) != std::string::npos);
  for (const std::string& gap : report.not_checked) CHECK(text.find(letters_of(gap)) != std::string::npos);
  for (const Source& source : report.unconfirmed) CHECK(text.find(letters_of(source.id)) != std::string::npos);
}

// Text and JSON give the same verdict, the worst of the findings.
void check_verdict(const checks::Report& report) {
  const auto json = nlohmann::json::parse(output::json({{report.file, &report, nullptr}}));
  const std::string verdict(checks::word_for(report.verdict));
  CHECK(json["verdict"] == verdict);
  CHECK(output::terminal(report, {}).find(") " + verdict + "\n") == 2);
  bool fail = false, missing = false;
  for (const auto& stage : json["stages"])
    for (const auto& finding : stage["findings"]) {
      fail = fail || finding["outcome"] == "fail";
      missing = missing || finding["outcome"] == "missing";
    }
  CHECK(verdict == (fail ? "NO-GO" : missing ? "HOLD" : "GO"));
}

}  // namespace

TEST_CASE("what the terminal says of every plan: within its columns, with every reason and caution, the verdict that JSON gives") {
  for (const std::string& file : all_plans()) {
    const checks::Report report = report_on(file);
    CAPTURE(file);
    check_width(report);
    check_told(report);
    check_verdict(report);
  }
}
