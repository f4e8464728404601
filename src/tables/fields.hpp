// The fields of one TOML table of a table file, each read once; a field that nothing asked for is a fault.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tables/table_file.hpp"

namespace firstpick::tables {

class Fields {
 public:
  // `words` names the table in messages: "[[entry]]".
  Fields(const TableFile& file, const toml::table& table, std::string_view words, Faults& faults)
      : file_(file), table_(table), words_(words), faults_(faults) {}

  // Text that is not empty. Required: its absence is a fault and gives an empty text.
  std::string text(std::string_view key);
  std::string text_or_none(std::string_view key);

  // One of `words`, required.
  std::string word(std::string_view key, const std::vector<std::string_view>& words);

  // A list of texts, none of them empty; required if `needed`.
  std::vector<std::string> texts(std::string_view key, bool needed);

  // A date without a time: "2026-01-31"; empty if absent.
  std::string date_or_none(std::string_view key);

  // The field as it is, for the caller to judge; nullptr and a fault if absent.
  const toml::node* any(std::string_view key);

  bool has(std::string_view key) const { return table_.contains(key); }
  // Where the key stands, and where its value; of the whole table if there is no such key.
  toml::source_region key_region(std::string_view key) const;
  toml::source_region value_region(std::string_view key) const;

  void fault(const toml::source_region& where, std::string what, std::string help = {});

  // To be called last: every field that was not asked for.
  void refuse_others();

 private:
  const toml::node* find(std::string_view key);
  std::string text_of(const toml::node& node, std::string_view key);
  void missing(std::string_view key);

  const TableFile& file_;
  const toml::table& table_;
  std::string_view words_;
  Faults& faults_;
  std::vector<std::string_view> asked_;
};

// The tables of an array of tables at the top of the file, `[[entry]]`; anything else below that key is a
// fault.
std::vector<const toml::table*> tables_of(const TableFile& file, std::string_view key, Faults& faults);

// Every key at the top of the file that is not in `known`.
void refuse_other_keys(const TableFile& file, const std::vector<std::string_view>& known, Faults& faults);

}  // namespace firstpick::tables
