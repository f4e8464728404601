#include "tables/fields.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace firstpick::tables {

const toml::node* Fields::find(std::string_view key) {
  asked_.push_back(key);
  return table_.get(key);
}

void Fields::fault(const toml::source_region& where, std::string what, std::string help) {
  faults_.push_back(file_.fault(where, std::move(what), std::move(help)));
}

void Fields::missing(std::string_view key) {
  fault({table_.source().begin, table_.source().begin, {}}, fmt::format("{} has no '{}'", words_, key));
}

toml::source_region Fields::key_region(std::string_view key) const {
  const auto found = table_.find(key);
  return found == table_.end() ? table_.source() : found->first.source();
}

toml::source_region Fields::value_region(std::string_view key) const {
  const toml::node* node = table_.get(key);
  return node ? node->source() : table_.source();
}

std::string Fields::text_of(const toml::node& node, std::string_view key) {
  const auto* text = node.as_string();
  if (!text) {
    fault(node.source(), fmt::format("'{}' is a text in quotes", key));
    return {};
  }
  if (text->get().find_first_not_of(" \t\n") == std::string::npos)
    fault(node.source(), fmt::format("'{}' is empty", key), "fill it in, or leave the field out");
  return text->get();
}

std::string Fields::text(std::string_view key) {
  const toml::node* node = any(key);
  return node ? text_of(*node, key) : std::string{};
}

std::string Fields::text_or_none(std::string_view key) {
  const toml::node* node = find(key);
  return node ? text_of(*node, key) : std::string{};
}

std::string Fields::word(std::string_view key, const std::vector<std::string_view>& words) {
  std::string given = text(key);
  if (!given.empty() && std::find(words.begin(), words.end(), given) == words.end())
    fault(value_region(key), fmt::format("'{}' cannot be '{}'", key, given), suggestion(given, words));
  return given;
}

std::vector<std::string> Fields::texts(std::string_view key, bool needed) {
  const toml::node* node = needed ? any(key) : find(key);
  if (!node) return {};
  const toml::array* list = node->as_array();
  if (!list || list->empty()) {
    fault(node->source(), fmt::format("'{}' is a list of texts: [\"...\", \"...\"]", key));
    return {};
  }
  std::vector<std::string> all;
  for (const toml::node& item : *list) all.push_back(text_of(item, key));
  return all;
}

std::string Fields::date_or_none(std::string_view key) {
  const toml::node* node = find(key);
  if (!node) return {};
  if (const auto* date = node->as_date())
    return fmt::format("{:04}-{:02}-{:02}", date->get().year, date->get().month, date->get().day);
  fault(node->source(), fmt::format("'{}' is a date without quotes: 2026-01-31", key));
  return {};
}

const toml::node* Fields::any(std::string_view key) {
  const toml::node* node = find(key);
  if (!node) missing(key);
  return node;
}

void Fields::refuse_others() {
  for (const auto& [key, value] : table_)
    if (std::find(asked_.begin(), asked_.end(), key.str()) == asked_.end())
      fault(key.source(), fmt::format("{} has no key '{}'", words_, key.str()),
            suggestion(key.str(), asked_));
}

std::vector<const toml::table*> tables_of(const TableFile& file, std::string_view key, Faults& faults) {
  const toml::node* node = file.root().get(key);
  if (!node) return {};
  std::vector<const toml::table*> tables;
  const toml::array* array = node->as_array();
  if (array)
    for (const toml::node& item : *array)
      if (const toml::table* table = item.as_table()) tables.push_back(table);
  if (!array || tables.size() != array->size())
    faults.push_back(
        file.fault(node->source(), fmt::format("'{0}' is written as tables, each below [[{0}]]", key)));
  return tables;
}

void refuse_other_keys(const TableFile& file, const std::vector<std::string_view>& known, Faults& faults) {
  for (const auto& [key, value] : file.root())
    if (std::find(known.begin(), known.end(), key.str()) == known.end())
      faults.push_back(file.fault(key.source(), fmt::format("the file has no key '{}'", key.str()),
                                  suggestion(key.str(), known)));
}

}  // namespace firstpick::tables
