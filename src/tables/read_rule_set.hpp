// A rule set from its file and its entries; a rule set with any value missing is refused.
#pragma once

#include <optional>

#include "tables/entry_reader.hpp"
#include "tables/rule_set.hpp"
#include "tables/table_file.hpp"

namespace firstpick::tables {

// `read` holds the entries of the file and, in their places, those of the plant. Faults are added to
// `faults`; a rule set comes back all the same, so that every fault is found in one run.
RuleSet read_rule_set(const TableFile& file, EntryReader& read, Faults& faults);

// The part of it that headed_insert_model.cpp reads, entries "headed.<symbol>".
HeadedInsertModel headed_insert_model(EntryReader& read);

// A plant's file of the name of a shipped rule set may change values only: no cautions, no mandatory rules.
void refuse_all_but_entries(const TableFile& file, Faults& faults);

}  // namespace firstpick::tables
