// sources.toml: the documents that entries name.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "tables/table_file.hpp"

namespace firstpick::tables {

struct Document {
  std::string key;  // "aci-318-19": carries the edition
  std::string title;
  std::string edition;
  std::string kind;  // "standard", "regulation", ...
};

using SourceList = std::map<std::string, Document, std::less<>>;

// Adds the [[source]] tables of the file; a key that is already there is a fault.
void read_sources(const TableFile& file, SourceList& sources, Faults& faults);

// As a report prints it: "ACI 318-19, Building code ..., 2019".
std::string title_of(const Document& document);

}  // namespace firstpick::tables
