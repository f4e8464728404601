// docs/plan-file.md, docs/strength-file.md and docs/shift-file.md say of every key what the reader does: their tables are written from the
// lists of keys.
//
// After a change of keys: run  unit_plan "write the key tables"  from the top of the source tree, and read
// the difference.

#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "unit/plan/key_table.hpp"

namespace {

constexpr const char* plan_page = "docs/plan-file.md";
constexpr const char* strength_page = "docs/strength-file.md";
constexpr const char* shift_page = "docs/shift-file.md";

std::string contents(const char* page) {
  std::ifstream in(page);
  REQUIRE(in);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

void write(const char* page, const std::string& text) {
  std::ofstream(page) << text;
  CHECK(contents(page) == text);
}

}  // namespace

using firstpick::plan::shift_file_sections;
using firstpick::plan::strength_file_sections;
using firstpick::tests::with_key_tables;

TEST_CASE("the key tables of docs/plan-file.md are those of the list of keys") {
  const std::string text = contents(plan_page);
  CHECK(text == with_key_tables(text));
}

TEST_CASE("the key tables of docs/strength-file.md are those of the list of keys") {
  const std::string text = contents(strength_page);
  CHECK(text == with_key_tables(text, strength_file_sections()));
}

TEST_CASE("the key tables of docs/shift-file.md are those of the list of keys") {
  const std::string text = contents(shift_page);
  CHECK(text == with_key_tables(text, shift_file_sections()));
}

TEST_CASE("write the key tables", "[.]") {
  write(plan_page, with_key_tables(contents(plan_page)));
  write(strength_page, with_key_tables(contents(strength_page), strength_file_sections()));
  write(shift_page, with_key_tables(contents(shift_page), shift_file_sections()));
}
