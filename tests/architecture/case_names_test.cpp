// CTest takes a list apart at semicolons: a case whose name has one would be run as two that do not exist.

#include <catch2/catch.hpp>

#include <regex>
#include <string>
#include <vector>

#include "architecture/source_tree.hpp"

using namespace firstpick::architecture;

namespace {

// The names of the cases in a text, literals that stand one after the other joined.
std::vector<std::string> case_names(const std::string& text) {
  static const std::regex head("TEST_CASE\\(\\s*((?:\"(?:[^\"\\\\]|\\\\.)*\"\\s*)+)");
  std::vector<std::string> names;
  for (std::sregex_iterator each(text.begin(), text.end(), head), end; each != end; ++each) names.push_back((*each)[1]);
  return names;
}

bool is_taken_apart(const std::string& name) { return name.find(';') != std::string::npos; }

}  // namespace

TEST_CASE("no name of a test case has a semicolon") {
  std::size_t seen = 0;
  for (const SourceFile& file : repository_files()) {
    if (!file.path.starts_with("tests/") || !file.path.ends_with(".cpp")) continue;
    std::string text;
    for (const std::string& line : file.lines) text += line + "\n";
    for (const std::string& name : case_names(text)) {
      CAPTURE(file.path, name);
      CHECK_FALSE(is_taken_apart(name));
      ++seen;
    }
  }
  CHECK(seen > 1000);
}

TEST_CASE("the rule of names sees a semicolon in any part of a name") {
  const std::string opening = std::string("TEST_") + "CASE(";
  CHECK(is_taken_apart(case_names(opening + "\"one; two\") {")[0]));
  CHECK(is_taken_apart(case_names(opening + "\n    \"one \"\n    \"two; three\") {")[0]));
  CHECK_FALSE(is_taken_apart(case_names(opening + "\"one, two\", \"[tag]\") { a; }")[0]));
}
