// A rule set from its file and its entries; a rule set with any value missing is refused.
#pragma once

#include <optional>

#include "tables/entry_reader.hpp"
#include "tables/rule_set.hpp"
#include "tables/table_file.hpp"

namespace firstpick::tables {

// `read` holds the entries of the file and, in their places, those of the plant. Faults are added to
// `faults`; a rule set comes back all the same, so that every fault is found in one run.
// `base`: the file of the rule set it is based on, which gives what the heading leaves out and the rules that must answer;
// null: none.
RuleSet read_rule_set(const TableFile& file, const TableFile* base, EntryReader& read, Faults& faults);

// The parts of it that headed_insert_model.cpp and en_1992_4.cpp read, entries "headed.<symbol>" and "cracking.<symbol>".
HeadedInsertModel headed_insert_model(EntryReader& read);
HeadedInsertModel shared_with_en_1992(EntryReader& read);  // the rest of it is no number
En1992HeadedModel en_1992_headed_model(EntryReader& read);
En1992Tension en_1992_tension(EntryReader& read);
std::optional<AnchorBarModel> anchor_bar_model(EntryReader& read, bool by_en);  // none where no entry begins it

// The rule set that `file` is based on; empty where it stands alone.
std::string base_of(const TableFile& file);

// A plant's file of the name of a shipped rule set may change values only: no cautions, no mandatory rules.
void refuse_all_but_entries(const TableFile& file, Faults& faults);

}  // namespace firstpick::tables
