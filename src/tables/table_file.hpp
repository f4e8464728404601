// The files below a directory of tables, read and parsed, not yet understood.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "record/diagnostic.hpp"
#include "tables/toml_file.hpp"

namespace firstpick::tables {

using Faults = std::vector<Diagnostic>;

class TableFile {
 public:
  TableFile(std::string path, std::string name, bool of_plant, toml::table root, std::string_view text);

  const std::string& path() const { return path_; }  // as messages show it
  const std::string& name() const { return name_; }  // below the directory: "rules/us.toml"
  bool is_rule_set() const { return name_.starts_with("rules/"); }
  // Tables of words say of which word each value is; rule sets and the models of inserts have values of their own too.
  bool has_own_values() const { return is_rule_set() || name_ == "loops.toml" || name_ == "plates.toml"; }
  bool is_of_plant() const { return of_plant_; }
  const toml::table& root() const { return root_; }

  // A fault at a key or value; the region's end gives the length of the caret.
  Diagnostic fault(const toml::source_region& where, std::string what, std::string help = {}) const;

 private:
  std::string path_, name_;
  bool of_plant_;
  toml::table root_;
  std::unique_ptr<const std::string> text_;  // stays where it is when the file is moved: lines_ looks into it
  Lines lines_;
};

// Reads sources.toml, the tables in the order of tables.hpp and rules/*.toml by name. Every byte read goes to
// `content` with the name of its file. Any other *.toml is a fault: a misspelt name would leave its values
// unread in silence. A file missing is a fault unless the directory is the plant's.
std::vector<TableFile> read_table_files(const std::filesystem::path& directory, bool of_plant,
                                        std::string& content, Faults& faults);

}  // namespace firstpick::tables
