// One rule, one file: a file past 400 lines is several things.

#include <catch2/catch.hpp>

#include "architecture/source_tree.hpp"

using namespace firstpick::architecture;

TEST_CASE("no source file is longer than 400 lines") {
  const auto files = source_files();
  REQUIRE_FALSE(files.empty());
  for (const SourceFile& file : files) {
    CAPTURE(file.path);
    CHECK(file.lines.size() <= 400);
  }
}
