// The direction of the data: a file includes only what its folder may (table in DEVELOPERS.md), and a large
// library stays behind the folder that needs it.

#include <catch2/catch.hpp>

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "architecture/source_tree.hpp"

using namespace firstpick::architecture;

namespace {

const std::map<std::string, std::set<std::string>> may_include = {
    {"units", {}},
    {"record", {"units"}},
    {"clock", {}},
    {"tables", {"units", "record"}},
    {"plan", {"units", "record", "clock", "tables"}},
    {"piece", {"units", "record", "plan"}},
    {"strength", {"units", "record", "tables", "plan"}},
    {"loads", {"units", "record", "tables", "plan", "piece"}},
    {"demands", {"units", "record", "tables", "plan", "piece", "loads"}},
    {"resistances", {"units", "record", "tables", "plan", "piece", "strength"}},
    {"checks", {"units", "record", "tables", "plan", "piece", "strength", "loads", "demands", "resistances"}},
    {"board", {"units", "record", "clock", "tables", "plan", "piece", "strength", "checks"}},
    {"audit", {"units", "record", "plan", "checks"}},
    {"comparison", {"units", "record", "tables", "plan", "piece", "strength", "loads", "demands", "resistances", "checks"}},
    {"decision_log", {"record"}},
    {"layout", {"units", "record", "tables", "plan", "piece", "strength", "loads", "demands", "resistances", "checks"}},
    {"output",
     {"units", "record", "clock", "plan", "piece", "checks", "board", "comparison", "decision_log", "layout", "audit"}},
    {"card", {"units", "record", "plan", "piece", "checks"}},
    {"pictures", {"units", "record", "plan", "piece", "checks", "card", "output"}},
    {"sheet", {"units", "record", "plan", "piece", "checks", "card"}},
    {"editor", {"units", "record", "tables", "plan"}},
};

std::string folder_of(const std::string& included) {
  const auto slash = included.find('/');
  return slash == std::string::npos ? "" : included.substr(0, slash);
}

bool is_allowed(const std::string& folder, const std::string& included) {
  if (folder.empty()) return true;  // pipeline, main, commands
  if (included == "version.hpp") return folder == "output" || folder == "card" || folder == "sheet";
  return folder_of(included) == folder || may_include.at(folder).contains(folder_of(included));
}

bool is_open_cascade(const Include& include) {
  return include.path.ends_with(".hxx") || include.path.starts_with("opencascade/");
}

// Files of src/ that include something for which `is_wanted` holds.
template <class Predicate>
std::vector<SourceFile> files_including(Predicate is_wanted) {
  std::vector<SourceFile> found;
  for (const SourceFile& file : source_files())
    for (const Include& include : includes_of(file.lines))
      if (is_wanted(include)) {
        found.push_back(file);
        break;
      }
  return found;
}

}  // namespace

TEST_CASE("every folder of src has its line in the table of includes") {
  REQUIRE_FALSE(source_files().empty());
  for (const SourceFile& file : source_files()) {
    CAPTURE(file.path);
    CHECK((file.folder.empty() || may_include.contains(file.folder)));
  }
}

TEST_CASE("a file includes only what its folder may") {
  for (const SourceFile& file : source_files())
    for (const Include& include : includes_of(file.lines)) {
      if (!include.quoted) continue;
      CAPTURE(file.path, include.path);
      CHECK(is_allowed(file.folder, include.path));
    }
}

TEST_CASE("our own files are included in quotes, from src, by a path that exists") {
  for (const SourceFile& file : source_files())
    for (const Include& include : includes_of(file.lines)) {
      CAPTURE(file.path, include.path);
      const bool is_ours = include.path == "version.hpp" || std::filesystem::exists("src/" + include.path);
      CHECK(include.quoted == is_ours);
    }
}

TEST_CASE("Open CASCADE stays behind piece") {
  std::set<std::string> elsewhere;
  for (const SourceFile& file : files_including(is_open_cascade))
    if (file.folder != "piece") elsewhere.insert(file.path);
  CHECK(elsewhere == std::set<std::string>{});
}

TEST_CASE("toml++ has one door") {
  std::set<std::string> users;
  for (const SourceFile& file :
       files_including([](const Include& include) { return include.path.starts_with("toml++/"); }))
    users.insert(file.path);
  CHECK(users == std::set<std::string>{"src/tables/toml_file.hpp"});
}

TEST_CASE("Boost.Geometry stays in one source file of resistances or piece") {
  const auto files =
      files_including([](const Include& include) { return include.path.starts_with("boost/geometry"); });
  for (const SourceFile& file : files) {
    CAPTURE(file.path);
    CHECK((file.folder == "resistances" || file.folder == "piece"));
    CHECK(file.path.ends_with(".cpp"));
  }
  CHECK(files.size() <= 1);
}

TEST_CASE("Eigen stays out of headers") {
  std::set<std::string> headers;
  for (const SourceFile& file :
       files_including([](const Include& include) { return include.path.starts_with("Eigen/"); }))
    if (!file.path.ends_with(".cpp")) headers.insert(file.path);
  CHECK(headers == std::set<std::string>{});
}

TEST_CASE("the rule of includes refuses what it must") {
  CHECK(is_open_cascade({"BRepAlgoAPI_Cut.hxx", false}));
  CHECK_FALSE(is_allowed("loads", "resistances/pullout.hpp"));
  CHECK_FALSE(is_allowed("resistances", "loads/weight.hpp"));
  CHECK_FALSE(is_allowed("resistances", "demands/hanging.hpp"));
  CHECK_FALSE(is_allowed("output", "demands/hanging.hpp"));
  CHECK_FALSE(is_allowed("units", "record/trace.hpp"));
  CHECK_FALSE(is_allowed("checks", "pipeline.hpp"));
  CHECK(is_allowed("checks", "resistances/pullout.hpp"));
  CHECK(is_allowed("loads", "loads/weight.hpp"));
  CHECK(is_allowed("", "output/card.hpp"));
  CHECK(is_allowed("output", "version.hpp"));
  CHECK_FALSE(is_allowed("resistances", "version.hpp"));

  const auto includes = includes_of({"#include \"a/b.hpp\"", "  #  include <c>", "// #include \"d\""});
  REQUIRE(includes.size() == 2);
  CHECK(includes[0].path == "a/b.hpp");
  CHECK(includes[0].quoted);
  CHECK(includes[1].path == "c");
  CHECK_FALSE(includes[1].quoted);
}
