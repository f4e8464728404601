#include "architecture/source_tree.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>

namespace firstpick::architecture {

namespace {

namespace fs = std::filesystem;

SourceFile read(const fs::path& path) {
  SourceFile file{path.generic_string(), {}, {}};
  if (std::distance(path.begin(), path.end()) > 2 && *path.begin() == "src")
    file.folder = std::next(path.begin())->string();
  std::ifstream stream(path);
  for (std::string line; std::getline(stream, line);) file.lines.push_back(line);
  return file;
}

std::vector<SourceFile> read_below(const fs::path& top, const std::set<std::string>& endings) {
  std::vector<SourceFile> files;
  for (const auto& entry : fs::recursive_directory_iterator(top))
    if (entry.is_regular_file() && endings.contains(entry.path().extension().string()))
      files.push_back(read(entry.path()));
  std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
  return files;
}

}  // namespace

std::vector<SourceFile> source_files() { return read_below("src", {".cpp", ".hpp", ".in"}); }

std::vector<SourceFile> repository_files() {
  const std::set<std::string> text = {".cpp",   ".hpp",  ".in",  ".toml", ".md",  ".txt", ".sh",
                                      ".cmake", ".json", ".svg", ".1",    ".inp", ".csv", ".html"};
  std::vector<SourceFile> files;
  for (const char* top : {"src", "tables", "tests", "docs"})
    for (auto& file : read_below(top, text)) files.push_back(std::move(file));
  for (const char* name : {"CMakeLists.txt", "README.md", "DEVELOPERS.md", ".ci/run"})
    if (fs::exists(name)) files.push_back(read(name));
  return files;
}

std::vector<Include> includes_of(const std::vector<std::string>& lines) {
  static const std::regex form(R"re(^\s*#\s*include\s*(["<])([^">]+)[">])re");
  std::vector<Include> found;
  for (const std::string& line : lines)
    if (std::smatch match; std::regex_search(line, match, form))
      found.push_back({match[2], match[1] == "\""});
  return found;
}

}  // namespace firstpick::architecture
