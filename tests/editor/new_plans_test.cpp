// firstpick new: each plan reads, is HOLD and never GO, says by itself what must be written, and is a plan
// still when all of it is written.

#include <catch2/catch.hpp>

#include <regex>
#include <set>
#include <sstream>

#include "editor/new_plan.hpp"
#include "editor/plan_writer.hpp"
#include "editor/schema.hpp"
#include "support/plan_files.hpp"
#include "support/schema_validator.hpp"
#include "support/toml_json.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct New {
  std::string name, text;
};

std::vector<New> all_new_plans() {
  std::vector<New> all;
  for (const editor::NewKind& kind : editor::new_kinds())
    for (const UnitSystem units : {UnitSystem::si, UnitSystem::us})
      all.push_back({std::string(kind.name) + (units == UnitSystem::us ? ", us" : ", si"),
                     editor::new_plan(kind.name, units)});
  return all;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

// The key or section of a line that is to be written: "# engineer = ...", "# [concrete.evidence]".
std::string to_write(const std::string& line) {
  static const std::regex form(R"(^# (\[+)?([a-z_.]+)(\]+| = .*)(  .*)?$)");
  std::smatch parts;
  return std::regex_match(line, parts, form) ? parts[2].str() : "";
}

std::string with_all_written(const std::string& text) {
  std::string all;
  for (const std::string& line : lines_of(text))
    all += (to_write(line).empty() ? line : line.substr(2)) + "\n";
  return all;
}

bool names(const std::string& text, const std::string& key) {
  return std::regex_search(text, std::regex("(^|[^a-z_])" + key + "($|[^a-z_])"));
}

}  // namespace

TEST_CASE(
    "a new plan reads and is HOLD: nothing fails, nothing is GO, and each reason names a line to write") {
  CHECK(editor::new_kinds().size() >= 9);
  for (const auto& [name, text] : all_new_plans()) {
    CAPTURE(name);
    const checks::Report report = report_on("new.toml", text);
    CHECK(report.verdict == checks::Verdict::hold);
    std::set<std::string> keys;
    for (const std::string& line : lines_of(text))
      if (const std::string key = to_write(line); !key.empty())
        keys.insert({key, key.substr(0, key.find('.'))});  // "rating.load" writes the rating
    std::size_t missing = 0;
    for (const checks::StageReport& stage : report.stages) {
      CHECK(stage.verdict == checks::Verdict::hold);
      for (const checks::Finding& finding : stage.findings) {
        CAPTURE(finding.rule, finding.subject, finding.text, finding.remedy);
        CHECK(finding.result != checks::Result::fail);
        if (finding.result != checks::Result::missing) continue;
        ++missing;
        const std::string said = finding.text + " " + finding.remedy;
        CHECK(std::ranges::any_of(keys, [&](const std::string& key) { return names(said, key); }));
      }
    }
    CHECK(missing > 10);
  }
}

TEST_CASE("a new plan with every line written is a plan without a fault") {
  for (const auto& [name, text] : all_new_plans()) {
    const std::string whole = with_all_written(text);
    CAPTURE(name, whole);
    REQUIRE(whole != text);
    const checks::Report report = report_on("new.toml", whole);
    CHECK(report.stages.size() == 1);
    CHECK(report.verdict != checks::Verdict::go);  // the examples of the list fit no piece
    for (const std::string& each : {text, whole}) {
      const auto parsed = tables::parse_toml("", each);
      REQUIRE(std::holds_alternative<toml::table>(parsed));
      const auto schema = nlohmann::json::parse(editor::schema_of("plan", real_tables()));
      CHECK(schema_faults(schema, json_of(std::get<toml::table>(parsed))).empty());
    }
  }
}

TEST_CASE("every number of a new plan is marked as an example, and its lines fit the page") {
  const std::regex quantity(R"(^([a-z_]+) = .*"-?[0-9.][^"]*[a-z][^"]*".*$)");
  for (const auto& [name, text] : all_new_plans()) {
    std::size_t marked = 0;
    std::string above;
    for (const std::string& line : lines_of(text)) {
      CAPTURE(name, line);
      CHECK(line.size() <= 110);
      const bool marked_above = above.starts_with("# EXAMPLE");
      above = line;
      if (!std::regex_match(line, quantity)) continue;
      CHECK((marked_above || line.find("EXAMPLE") != std::string::npos));
      ++marked;
    }
    CHECK(marked >= 5);
  }
}

TEST_CASE("an example of the list in the units of the plan") {
  const plan::Key* rated = plan::find_key(plan::section("sling"), "rated");
  REQUIRE(rated);
  REQUIRE(rated->example == "\"11250 lb\"");
  CHECK(editor::example_in(UnitSystem::us, *rated) == "\"11250 lb\"");
  CHECK(editor::example_in(UnitSystem::si, *rated) == "\"5100 kg\"");
  const plan::Key* results = plan::find_key(plan::section("concrete.evidence"), "results");
  REQUIRE(results);
  CHECK(editor::example_in(UnitSystem::si, *results) == R"(["18 MPa", "18 MPa", "19 MPa"])");
  const plan::Key* angle = plan::find_key(plan::section("sling"), "minimum_angle");
  REQUIRE(angle);
  CHECK(editor::example_in(UnitSystem::us, *angle) == angle->example);
}
