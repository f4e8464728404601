// One value of a table file with its provenance: an [[entry]]. Fields and rules: docs/tables.md.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "record/source.hpp"
#include "tables/source_list.hpp"
#include "tables/table_file.hpp"

namespace firstpick::tables {

struct Entry {
  Source source;
  std::string
      of;  // the word a plan writes ("steel-oiled"), or a stage; empty where the value is of the whole file
  std::string gives;  // the name the program reads it by: "adhesion", "headed.k_c"
  std::variant<std::monostate, double, std::string> value;  // nothing where the file has a fault
  std::string unit;                                         // empty for a word
  const TableFile* file;
  toml::source_region id_at, of_at, gives_at, value_at, unit_at;
};

// Every [[entry]] of the file. Incomplete provenance, a source that is not in `sources`, an id twice: faults.
// `sources` may be nullptr where they could not be read: then no source is looked up.
std::vector<Entry> read_entries(const TableFile& file, const SourceList* sources, Faults& faults);

// Puts the plant's entries in the place of those of the same id, appends the others. `overridden` gets the
// ids. An entry that would change what it gives, not how much, is a fault.
void override_entries(std::vector<Entry>& entries, std::vector<Entry> of_plant,
                      std::vector<std::string>& overridden, Faults& faults);

}  // namespace firstpick::tables
