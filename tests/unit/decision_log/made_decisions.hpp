// Invented decisions, and a record in a folder of its own that is removed behind the test.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include <stdlib.h>

#include "decision_log/decision.hpp"

namespace firstpick::tests {

inline decision_log::Decision made_decision(int number) {
  decision_log::Decision decision;
  for (const decision_log::Field& field : decision_log::fields)
    decision.*field.text = std::string(field.name) + " \xE2\x80\x93 '\"\n" + std::to_string(number);
  return decision;
}

inline std::vector<decision_log::Decision> made_decisions(int count, int from = 0) {
  std::vector<decision_log::Decision> decisions;
  for (int i = 0; i < count; ++i) decisions.push_back(made_decision(from + i));
  return decisions;
}

struct RecordFile {
  // `where`: used if there is such a folder.
  explicit RecordFile(const std::filesystem::path& where = {}) {
    const bool there = !where.empty() && std::filesystem::is_directory(where);
    std::string name =
        ((there ? where : std::filesystem::temp_directory_path()) / "firstpick-record-XXXXXX").string();
    folder = ::mkdtemp(name.data()) ? name : "";
    path = folder + "/decisions.sqlite";
  }
  ~RecordFile() {
    std::error_code ignored;
    std::filesystem::remove_all(folder, ignored);
  }
  RecordFile(const RecordFile&) = delete;
  RecordFile& operator=(const RecordFile&) = delete;

  std::string folder, path;
};

}  // namespace firstpick::tests
