// Nothing in the repository depends on the machine it was written on.

#include <catch2/catch.hpp>

#include <regex>
#include <string>

#include "architecture/source_tree.hpp"

using namespace firstpick::architecture;

namespace {

// An absolute path below a folder that belongs to a user or to one machine.
bool names_a_machine_path(const std::string& line) {
  static const std::regex machine_path(
      R"((^|[^A-Za-z0-9_.~/-])/(home|root|tmp|work|mnt|Users|builds?)/[A-Za-z0-9_.])");
  return std::regex_search(line, machine_path);
}

}  // namespace

TEST_CASE("no file names a path of somebody's machine") {
  const auto files = repository_files();
  REQUIRE_FALSE(files.empty());
  for (const SourceFile& file : files)
    for (std::size_t i = 0; i < file.lines.size(); ++i) {
      if (file.path == "tests/architecture/machine_paths_test.cpp") continue;  // the examples below
      CAPTURE(file.path, i + 1, file.lines[i]);
      CHECK_FALSE(names_a_machine_path(file.lines[i]));
    }
}

TEST_CASE("a machine path is recognised, a path of the repository is not") {
  CHECK(names_a_machine_path("open(\"/home/somebody/plan.toml\")"));
  CHECK(names_a_machine_path("see /tmp/out.json"));
  CHECK_FALSE(names_a_machine_path("docs/work/plan.toml"));
  CHECK_FALSE(names_a_machine_path("https://example.org/home/page"));
  CHECK_FALSE(names_a_machine_path("mass/work/time"));
}
