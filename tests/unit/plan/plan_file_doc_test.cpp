// docs/plan-file.md says of every key what the reader does: its tables are written from the list of keys.
//
// After a change of keys: run  unit_plan "write the key tables"  from the top of the source tree, and read
// the difference.

#include <fstream>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "unit/plan/key_table.hpp"

namespace {

constexpr const char* page = "docs/plan-file.md";

std::string contents() {
  std::ifstream in(page);
  REQUIRE(in);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

}  // namespace

TEST_CASE("the key tables of docs/plan-file.md are those of the list of keys") {
  const std::string text = contents();
  CHECK(text == firstpick::tests::with_key_tables(text));
}

TEST_CASE("write the key tables", "[.]") {
  const std::string text = firstpick::tests::with_key_tables(contents());
  std::ofstream(page) << text;
  CHECK(contents() == text);
}
