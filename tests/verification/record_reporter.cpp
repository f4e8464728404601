// The verification record: every comparison with an outside source that the tests make, as a table in Markdown.
//
//   build/tests/verification --reporter record > docs/verification.md      (tests/verification/update.sh)
//
// Source, case, printed value, ours and the tolerance are read off the tests themselves: the comment at the top of each
// file, the name of each case, and each assertion `CHECK(ours == Approx(printed).margin(tolerance))`.

#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include <cmath>
#include <catch2/catch.hpp>

#include <cstdlib>
#include <fstream>
#include <map>
#include <regex>
#include <string>
#include <vector>

#include "verification/coverage.hpp"

namespace {

struct Row {
  std::string source_file, test_case, what, ours, printed, tolerance;
};

// The comment at the top of a test file: its source, in words.
std::string top_comment(const std::string& file) {
  std::ifstream in(file);
  std::string text, line;
  while (std::getline(in, line) && line.rfind("//", 0) == 0)
    text += line.size() > 2 ? line.substr(line[2] == ' ' ? 3 : 2) + "\n" : "\n";
  return text;
}

// Vertical bars end a cell in Markdown, and an asterisk or underscore may start emphasis: code quotes keep them.
std::string cell(std::string text) {
  std::string out;
  for (const char c : text) out += c == '|' ? std::string("\\|") : c == '\n' ? std::string(" ") : std::string(1, c);
  return out;
}

std::string difference(const std::string& ours, const std::string& printed) {
  const double a = std::strtod(ours.c_str(), nullptr), b = std::strtod(printed.c_str(), nullptr);
  if (b == 0.0) return a == 0.0 ? "0" : "-";
  char text[32];
  const double percent = std::round(1e5 * (a - b) / b) / 1e3;
  std::snprintf(text, sizeof text, percent == 0.0 ? "0.000 %%" : "%+.3f %%", percent);
  return text;
}

// Seven figures: more would record the rounding of the processor.
std::string figures(const std::string& number) {
  char text[32];
  std::snprintf(text, sizeof text, "%.7g", std::strtod(number.c_str(), nullptr));
  return text;
}

class RecordReporter : public Catch::StreamingReporterBase<RecordReporter> {
 public:
  explicit RecordReporter(const Catch::ReporterConfig& config) : StreamingReporterBase(config) {
    m_reporterPrefs.shouldReportAllAssertions = true;
  }
  static std::string getDescription() { return "the verification record, in Markdown"; }
  void assertionStarting(const Catch::AssertionInfo&) override {}
  bool assertionEnded(const Catch::AssertionStats& stats) override {
    const auto& result = stats.assertionResult;
    static const std::regex compared(R"(^(\S+) == Approx\( (\S+) \)$)");
    static const std::regex written(R"(^(.*?) == Approx\((.*?)\)\.(margin|epsilon)\((.*)\)$)");
    std::smatch numbers, words;
    const std::string expanded = result.getExpandedExpression(), expression = result.getExpression();
    if (!std::regex_match(expanded, numbers, compared)) return true;
    Row row{result.getSourceInfo().file, currentTestCaseInfo->name, expression, numbers[1], numbers[2], ""};
    if (std::regex_match(expression, words, written))
      row = {row.source_file, row.test_case, words[1], row.ours, row.printed,
             words[3] == "margin" ? words[4].str() : words[4].str() + " relative"};
    std::string context;
    for (const auto& info : stats.infoMessages) context += (context.empty() ? "" : ", ") + info.message;
    if (!context.empty()) row.what += " (" + context + ")";
    rows_[currentTestCaseInfo->lineInfo.file].push_back(std::move(row));
    return true;
  }
  void testRunEnded(const Catch::TestRunStats& stats) override {
    std::size_t count = 0;
    for (const auto& [file, rows] : rows_) count += rows.size();
    stream << "# Verification record\n\n"
           << "Every comparison with an outside source that the tests in `tests/verification` make, written by those "
              "tests\n(`sh tests/verification/update.sh`); a test holds this file to them. "
           << count << " comparisons in " << rows_.size()
           << " files.\nTolerance: half a unit of the last printed digit unless the source says otherwise; "
              "\"difference\" is ours\nagainst the printed value.\n\n## What is checked against what\n\n"
           << firstpick::verification::coverage_tables(firstpick::verification::coverage_of_source_tree());
    for (const auto& [file, rows] : rows_) {
      const std::size_t slash = file.rfind('/');
      stream << "\n## " << file.substr(slash == std::string::npos ? 0 : slash + 1) << "\n\n"
             << top_comment(file) << "\n| case | compared | printed | ours | difference | tolerance |\n|---|---|---|---|---|---|\n";
      for (const Row& row : rows)
        stream << "| " << cell(row.test_case) << " | `" << cell(row.what) << "` | " << figures(row.printed) << " | " << figures(row.ours)
               << " | " << difference(row.ours, row.printed) << " | " << (row.tolerance.empty() ? "-" : "`" + cell(row.tolerance) + "`") << " |\n";
    }
    StreamingReporterBase::testRunEnded(stats);
  }

 private:
  std::map<std::string, std::vector<Row>> rows_;  // by file, files in order of name
};

}  // namespace

CATCH_REGISTER_REPORTER("record", RecordReporter)
