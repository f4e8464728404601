// Every plan in tests/plans/bad carries the diagnostics it must get as comment lines: none missing, none more.
//
//   #: 14:1 [[rigging]] has no key 'sling_angel'   line, column, what is wrong; 0:0 is the file as a whole
//   #: help did you mean 'sling_angle'?            belongs to the line above; without help there is no such line
//
// A plan is read, and if the reader finds no fault its solid is made.

#include <algorithm>
#include <iterator>
#include <sstream>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "piece/body.hpp"
#include "plan/read_plan.hpp"
#include "support/expected_faults.hpp"
#include "support/plan_files.hpp"

namespace {

using namespace firstpick;
using namespace firstpick::tests;

std::vector<Diagnostic> faults_of(const std::string& file, const std::string& text) {
  const auto read = plan::read_plan(file, text, real_tables());
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return *faults;
  const auto body = piece::make_body(std::get<plan::Plan>(read));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&body)) return *faults;
  return {};
}

std::vector<std::string> without(const std::vector<std::string>& all, const std::vector<std::string>& some) {
  std::vector<std::string> rest;
  std::ranges::set_difference(all, some, std::back_inserter(rest));
  return rest;
}

}  // namespace

TEST_CASE("every bad plan gets its diagnostics, and no others") {
  const auto files = test_plans("bad");
  REQUIRE(files.size() >= 40);
  for (const std::string& file : files) {
    const std::string text = contents_of(file);
    const auto must = expected(text), are = written(faults_of(file, text));
    const auto missing = without(must, are), extra = without(are, must);
    CAPTURE(file, missing, extra);
    CHECK_FALSE(must.empty());
    CHECK(missing.empty());
    CHECK(extra.empty());
  }
}

TEST_CASE("diagnostics stand in the order of the file, and each can be shown with its line") {
  for (const std::string& file : test_plans("bad")) {
    const std::string text = contents_of(file);
    const auto faults = faults_of(file, text);
    CAPTURE(file);
    const auto place = [](const Diagnostic& fault) {
      return std::pair{fault.place.line, fault.place.column};
    };
    CHECK(std::ranges::is_sorted(faults, {}, place));
    for (const Diagnostic& fault : faults) {
      const std::string shown = show(fault, text);
      CAPTURE(shown);
      CHECK(shown.starts_with(fault.place.line == 0 ? file + ": error: "
                                                    : fmt::format("{}:{}:{}: error: ", file, fault.place.line,
                                                                  fault.place.column)));
      CHECK((fault.place.line == 0 || shown.find('^') != std::string::npos));
    }
  }
}

TEST_CASE("the example of docs/plan-file.md is a whole plan without a fault") {
  const std::string page = contents_of("docs/plan-file.md");
  const std::string begin = "<!-- example -->\n```toml\n";
  const std::size_t from = page.find(begin);
  REQUIRE(from != std::string::npos);
  const std::string text =
      page.substr(from + begin.size(), page.find("```", from + begin.size()) - from - begin.size());
  CHECK(text.starts_with("format = 1"));
  CHECK(written(faults_of("plan.toml", text)).empty());
}
