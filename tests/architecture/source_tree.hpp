// The files of the repository as text, for tests about the source itself.
// Paths are from the top of the source tree.
#pragma once

#include <string>
#include <vector>

namespace firstpick::architecture {

struct SourceFile {
  std::string path;    // "src/loads/weight.cpp"
  std::string folder;  // "loads"; empty for a file directly in src/
  std::vector<std::string> lines;
};

struct Include {
  std::string path;  // as written between the quotes or brackets
  bool quoted = false;
};

// Every .cpp, .hpp and .hpp.in below src/, ordered by path.
std::vector<SourceFile> source_files();

// Every file of text that is handed out: all but build/, version control and the licence.
std::vector<SourceFile> repository_files();

std::vector<Include> includes_of(const std::vector<std::string>& lines);

}  // namespace firstpick::architecture
