// The whole program on the plans of ok/, hold/ and nogo/. Each plan says in its `#:` lines what must be found:
//
//   #: strip verdict NO-GO
//   #: strip insert-breakout A1 fail
//
// Findings that pass are not listed. What is listed and not found, and what is found and not listed, both fail.

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "support/plan_files.hpp"
#include "support/report_numbers.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

using Lines = std::vector<std::string>;

Lines expected_in(const std::string& text) {
  constexpr std::string_view mark = "#: ";
  Lines expected;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);)
    if (line.starts_with(mark)) expected.push_back(line.substr(mark.size()));
  std::ranges::sort(expected);
  return expected;
}

Lines found_in(const checks::Report& report) {
  Lines found;
  for (const std::string& line : outcomes(report))
    if (!line.ends_with(" pass")) found.push_back(line);
  for (const checks::StageReport& stage : report.stages)
    found.push_back(fmt::format("{} verdict {}", checks::word_for(stage.kind), checks::word_for(stage.verdict)));
  std::ranges::sort(found);
  return found;
}

std::string rule_of(const std::string& line) {
  const std::size_t start = line.find(' ') + 1;
  return line.substr(start, line.find(' ', start) - start);
}

void check_folder(const std::string& folder, checks::Verdict verdict) {
  const auto files = test_plans(folder);
  REQUIRE(files.size() >= 3);
  for (const std::string& file : files) {
    const std::string text = contents_of(file);
    const checks::Report report = report_on(file, text);
    CAPTURE(file);
    CHECK(found_in(report) == expected_in(text));
    CHECK(report.verdict == verdict);
  }
}

}  // namespace

TEST_CASE("plans that may be lifted") { check_folder("ok", checks::Verdict::go); }
TEST_CASE("plans in which something is missing") { check_folder("hold", checks::Verdict::hold); }
TEST_CASE("plans in which something fails") { check_folder("nogo", checks::Verdict::no_go); }

TEST_CASE("every rule is tripped by a plan") {
  std::set<std::string> tripped;
  for (const char* folder : {"hold", "nogo"})
    for (const std::string& file : test_plans(folder))
      for (const std::string& line : expected_in(contents_of(file))) tripped.insert(rule_of(line));
  for (const checks::Rule& rule : checks::all_rules()) {
    CAPTURE(rule.id);
    CHECK(tripped.contains(std::string(rule.id)));
  }
}

TEST_CASE("each plan that is stopped says what stops it, and what would change it") {
  for (const char* folder : {"hold", "nogo"})
    for (const std::string& file : test_plans(folder)) {
      const checks::Report report = report_on(file);
      for (const checks::StageReport& stage : report.stages)
        for (const checks::Finding& finding : stage.findings) {
          if (finding.result < checks::Result::missing) continue;
          CAPTURE(file, finding.rule, finding.subject, finding.text);
          CHECK_FALSE(finding.text.empty());
          CHECK_FALSE(finding.remedy.empty());
        }
    }
}

TEST_CASE("the plans of ok/ are in both systems of units") {
  std::set<UnitSystem> systems;
  for (const std::string& file : test_plans("ok")) systems.insert(report_on(file).units);
  CHECK(systems.size() == 2);
}
