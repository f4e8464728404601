// A copy of the shipped tables in a folder of its own, to be changed by a test, and the faults that reading
// it gives.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "tables/tables.hpp"

namespace firstpick::tables {

class WrittenTables {
 public:
  WrittenTables();  // copies the shipped tables
  WrittenTables(const WrittenTables&) = delete;
  WrittenTables& operator=(const WrittenTables&) = delete;
  ~WrittenTables();

  std::filesystem::path directory() const { return root_ / "tables"; }
  std::filesystem::path plant() const { return root_ / "plant"; }

  // `name` is below tables/, or below plant/ if it begins with "plant/".
  void write(const std::string& name, const std::string& text) const;
  std::string text_of(const std::string& name) const;
  void remove(const std::string& name) const;
  // Replaces the one place where `from` stands.
  void replace(const std::string& name, const std::string& from, const std::string& to) const;

  std::variant<Tables, std::vector<Diagnostic>> read() const;  // with plant/ if the test wrote there
  Tables good() const;                                         // fails the test if there is a fault

  // "form-faces.toml:9:8: what (help)"; the place is left out where there is none.
  std::vector<std::string> faults() const;

  // "rules/us.toml:12:1" of the first byte of `text` in the file.
  std::string place(const std::string& name, const std::string& text) const;

 private:
  std::filesystem::path path_of(const std::string& name) const;
  std::filesystem::path root_;
};

}  // namespace firstpick::tables
