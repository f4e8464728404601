// The JSON Schema of a file, from the list of keys that its reader uses, for the language servers of editors.
//
// It is of draft-07, and keeps to keywords that mean the same from draft-04 on: servers of TOML differ in how
// far they go. A date or time of TOML is checked as the text that it is written as.
#pragma once

#include <string>
#include <string_view>

#include "plan/keys.hpp"
#include "tables/tables.hpp"

namespace firstpick::editor {

// "plan", "strength" or "shift"; null for another.
const plan::SectionList* sections_of(std::string_view file_kind);

// `title` is shown by editors; the words of tables are those of `tables`.
std::string schema(const plan::SectionList& sections, std::string_view title, const tables::Tables& tables);

// The one of a file kind, which must exist.
std::string schema_of(std::string_view file_kind, const tables::Tables& tables);

}  // namespace firstpick::editor
