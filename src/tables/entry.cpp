#include "tables/entry.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include <fmt/format.h>

#include "tables/fields.hpp"
#include "tables/provenance.hpp"

namespace firstpick::tables {
namespace {

void read_value(Fields& fields, Entry& entry) {
  const toml::node* node = fields.any("value");
  entry.value_at = fields.value_region("value");
  entry.unit_at = fields.value_region("unit");
  if (!node) {
    fields.text_or_none("unit");
    return;
  }
  if (const auto* word = node->as_string()) {
    entry.value = word->get();
    entry.source.value_text = word->get();
    if (fields.has("unit")) fields.fault(fields.key_region("unit"), "a word has no unit");
    fields.text_or_none("unit");
    return;
  }
  const std::optional<double> number = node->is_number() ? node->value<double>() : std::nullopt;
  entry.unit = fields.text("unit");
  if (!number) {
    fields.fault(node->source(), "'value' is a number or a word in quotes");
    return;
  }
  if (!std::isfinite(*number)) fields.fault(node->source(), "'value' is not a finite number");
  entry.value = *number;
  entry.source.value_text =
      entry.unit == "1" ? fmt::format("{}", *number) : fmt::format("{} {}", *number, entry.unit);
}

Entry read_entry(const TableFile& file, const toml::table& table, const SourceList* sources, Faults& faults) {
  Fields fields(file, table, "[[entry]]", faults);
  Entry entry;
  entry.file = &file;
  Source& source = entry.source;
  source.table = file.is_of_plant() ? file.name() + " of the plant" : file.name();
  source.id = fields.text("id");
  source.symbol = fields.text("symbol");
  source.what = fields.text("what");
  entry.of = file.has_own_values() ? fields.text_or_none("of") : fields.text("of");
  entry.gives = fields.text("gives");
  entry.id_at = fields.value_region("id");
  entry.of_at = fields.value_region("of");
  entry.gives_at = fields.value_region("gives");
  read_value(fields, entry);
  read_provenance(fields, source, sources, file.is_of_plant());
  fields.refuse_others();
  return entry;
}

}  // namespace

std::vector<Entry> read_entries(const TableFile& file, const SourceList* sources, Faults& faults) {
  std::vector<Entry> entries;
  std::set<std::string, std::less<>> ids;
  for (const toml::table* table : tables_of(file, "entry", faults)) {
    Entry entry = read_entry(file, *table, sources, faults);
    if (!entry.source.id.empty() && !ids.insert(entry.source.id).second)
      faults.push_back(
          file.fault(entry.id_at, fmt::format("the id '{}' is used twice in this file", entry.source.id)));
    entries.push_back(std::move(entry));
  }
  return entries;
}

void override_entries(std::vector<Entry>& entries, std::vector<Entry> of_plant,
                      std::vector<std::string>& overridden, Faults& faults) {
  const std::size_t shipped = entries.size();
  for (Entry& own : of_plant) {
    const auto end = entries.begin() + static_cast<std::ptrdiff_t>(shipped);
    const auto same =
        std::find_if(entries.begin(), end, [&](const Entry& e) { return e.source.id == own.source.id; });
    if (same == end) {
      entries.push_back(std::move(own));
    } else if (same->gives != own.gives || same->of != own.of) {
      faults.push_back(
          own.file->fault(own.id_at, fmt::format("'{}' is the id of another value", own.source.id),
                          fmt::format("it gives '{}'{}", same->gives,
                                      same->of.empty() ? "" : fmt::format(" of '{}'", same->of))));
    } else {
      overridden.push_back(own.source.id);
      *same = std::move(own);
    }
  }
}

}  // namespace firstpick::tables
