#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "tables/entry.hpp"
#include "tables/cast_in_tables.hpp"
#include "tables/fields.hpp"
#include "tables/read_rule_set.hpp"
#include "tables/strength_tables.hpp"
#include "tables/tables.hpp"
#include "tables/word_tables.hpp"

namespace firstpick::tables {
namespace {

// The shipped file and the plant's file of one name, with their entries put together.
struct Table {
  const TableFile* file = nullptr;  // the shipped one; the plant's where there is no other
  std::vector<Entry> entries;
};
using TableMap = std::map<std::string, Table>;

void add_file(TableMap& tables, const TableFile& file, const SourceList* sources,
              std::vector<std::string>& overridden, Faults& faults) {
  Table& table = tables[file.name()];
  std::vector<Entry> entries = read_entries(file, sources, faults);
  if (!table.file) {
    table.file = &file;
    table.entries = std::move(entries);
  } else {
    if (file.is_rule_set()) refuse_all_but_entries(file, faults);
    override_entries(table.entries, std::move(entries), overridden, faults);
  }
  if (!file.is_rule_set()) refuse_other_keys(file, {"title", "entry"}, faults);
}

// An id names one value of the tables that all rule sets share, and one within each rule set.
void refuse_ids_twice(const TableMap& tables, Faults& faults) {
  std::map<std::string_view, std::string_view> shared;
  const auto refuse = [&](const Table& table, bool add) {
    for (const Entry& entry : table.entries) {
      const auto same = shared.find(entry.source.id);
      if (same == shared.end()) {
        if (add) shared.emplace(entry.source.id, entry.source.table);
      } else if (!entry.source.id.empty() && same->second != entry.source.table) {
        faults.push_back(entry.file->fault(
            entry.id_at, fmt::format("the id '{}' is used in {} too", entry.source.id, same->second)));
      }
    }
  };
  for (const auto& [name, table] : tables)
    if (!table.file->is_rule_set()) refuse(table, true);
  for (const auto& [name, table] : tables)
    if (table.file->is_rule_set()) refuse(table, false);
}

template <class ReadTable>
auto read_table(const TableMap& tables, const std::string& name, Faults& faults, ReadTable read_it) {
  static const std::vector<Entry> none;
  const auto found = tables.find(name);  // absent only where its file had a fault
  EntryReader reader(found == tables.end() ? none : found->second.entries,
                     found == tables.end() ? name : found->second.file->path(), faults);
  return read_it(reader);
}

// The table that a rule set is based on. Null: none, or a fault that was told.
const Table* base_table(const Table& table, const TableMap& tables, Faults& faults) {
  const std::string base = base_of(*table.file);
  if (base.empty()) return nullptr;
  const auto found = tables.find(fmt::format("rules/{}.toml", base));
  if (found == tables.end()) {
    std::vector<std::string_view> known;
    for (const auto& [name, other] : tables)
      if (other.file->is_rule_set()) known.push_back(std::string_view(name).substr(6, name.size() - 11));
    faults.push_back({table.file->path(), {}, fmt::format("based_on: there is no rule set '{}'", base), suggestion(base, known)});
    return nullptr;
  }
  if (!base_of(*found->second.file).empty()) {
    faults.push_back({table.file->path(), {},
                      fmt::format("based_on: '{}' is itself based on another rule set", base),
                      fmt::format("name '{}', and write what is to be changed", base_of(*found->second.file))});
    return nullptr;
  }
  return &found->second;
}

// What it writes itself takes the place of the same value of its base.
std::vector<Entry> entries_on_base(const Table& table, const Table& base) {
  std::vector<Entry> all = base.entries;
  for (const Entry& own : table.entries) {
    const auto same = std::ranges::find_if(all, [&](const Entry& e) { return e.gives == own.gives && e.of == own.of; });
    if (same == all.end()) all.push_back(own);
    else *same = own;
  }
  return all;
}

// Two of its own entries may not give one value: the second would take the place of the first in silence.
void refuse_given_twice(const Table& table, Faults& faults) {
  EntryReader(table.entries, table.file->path(), faults);
}

// Told on every answer, before its own cautions.
std::string what_is_its_own(const RuleSet& rules, const Table& table) {
  std::vector<std::string> own;
  for (const Entry& entry : table.entries)
    if (const std::string name = entry.of.empty() ? entry.gives : entry.gives + " of " + entry.of;
        std::ranges::find(own, name) == own.end())
      own.push_back(name);
  return fmt::format("Rule set '{}' is rule set '{}' with {} of its own and nothing else: {}.", rules.id, rules.based_on,
                     own.size() == 1 ? "one value" : fmt::format("{} values", own.size()), fmt::join(own, ", "));
}

// A rule set that is based on one with faults would tell them again: it waits until its base has none.
void read_rule_sets(Tables& result, const TableMap& tables, Faults& faults) {
  std::vector<const Table*> in_order, based;
  for (const auto& [name, table] : tables)
    if (table.file->is_rule_set()) (base_of(*table.file).empty() ? in_order : based).push_back(&table);
  const auto alone = static_cast<std::ptrdiff_t>(in_order.size());
  in_order.insert(in_order.end(), based.begin(), based.end());
  std::set<const Table*> with_faults;
  for (std::ptrdiff_t i = 0; i < static_cast<std::ptrdiff_t>(in_order.size()); ++i) {
    const Table& table = *in_order[static_cast<std::size_t>(i)];
    const Table* base = i < alone ? nullptr : base_table(table, tables, faults);
    if (i >= alone && (!base || with_faults.contains(base))) continue;
    const std::size_t told = faults.size();
    if (base) refuse_given_twice(table, faults);
    const std::vector<Entry> entries = base ? entries_on_base(table, *base) : table.entries;
    EntryReader reader(entries, table.file->path(), faults);
    RuleSet rules = read_rule_set(*table.file, base ? base->file : nullptr, reader, faults);
    if (base) rules.cautions.insert(rules.cautions.begin(), what_is_its_own(rules, table));
    if (faults.size() > told) with_faults.insert(&table);
    const std::string id = rules.id;
    result.rule_sets.emplace(id, std::move(rules));
  }
}

void add_entries(Tables& result, const TableMap& tables, const std::vector<TableFile>& files) {
  std::set<std::string_view> done;
  for (const TableFile& file : files)
    if (const auto found = tables.find(file.name()); found != tables.end() && done.insert(file.name()).second)
      for (const Entry& entry : found->second.entries) result.entries.push_back(entry.source);
}

void in_order_of_place(Faults& faults, const std::vector<TableFile>& files) {
  const auto rank = [&](const Diagnostic& d) {
    const auto file =
        std::find_if(files.begin(), files.end(), [&](const TableFile& f) { return f.path() == d.file; });
    return std::tuple(file - files.begin(), d.place.line, d.place.column);
  };
  std::stable_sort(faults.begin(), faults.end(),
                   [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
}

}  // namespace

std::variant<Tables, std::vector<Diagnostic>> read_tables(const std::filesystem::path& directory,
                                                          const std::filesystem::path& plant_directory) {
  Faults faults;
  Tables result;
  std::vector<TableFile> files = read_table_files(directory, false, result.content, faults);
  if (!plant_directory.empty())
    for (TableFile& file : read_table_files(plant_directory, true, result.content, faults))
      files.push_back(std::move(file));
  const bool all_parsed = faults.empty();

  SourceList sources;
  for (const TableFile& file : files)
    if (file.name() == "sources.toml") read_sources(file, sources, faults);
  TableMap tables;
  for (const TableFile& file : files)
    if (file.name() != "sources.toml")
      add_file(tables, file, all_parsed ? &sources : nullptr, result.overridden, faults);
  refuse_ids_twice(tables, faults);

  result.form_faces = read_table(tables, "form-faces.toml", faults, form_faces);
  result.steels = read_table(tables, "steels.toml", faults, steels);
  result.concretes = read_table(tables, "concretes.toml", faults, concretes);
  result.slings = read_table(tables, "slings.toml", faults, slings);
  result.hoists = read_table(tables, "hoists.toml", faults, hoists);
  result.grounds = read_table(tables, "grounds.toml", faults, grounds);
  result.specimens = read_table(tables, "specimens.toml", faults, specimens);
  if (tables.contains("legs.toml")) result.legs = read_table(tables, "legs.toml", faults, leg_limits);
  if (tables.contains("wind.toml")) result.wind = read_table(tables, "wind.toml", faults, wind);
  // Without its file nothing more is said of a table than that.
  if (tables.contains("maturity.toml"))
    result.maturity = read_table(tables, "maturity.toml", faults, maturity_constants);
  read_table(tables, "growth-curves.toml", faults, [&](EntryReader& read) {
    result.growth_curves = growth_curves(read);
    result.growth_bands = growth_bands(read);
    read.refuse_others();
    return true;
  });
  if (tables.contains("acceptance.toml"))
    result.acceptance = read_table(tables, "acceptance.toml", faults, acceptance_limits);
  if (tables.contains("loops.toml")) result.loops = read_table(tables, "loops.toml", faults, loop_model);
  if (tables.contains("plates.toml")) result.plates = read_table(tables, "plates.toml", faults, plate_model);
  read_rule_sets(result, tables, faults);
  add_entries(result, tables, files);
  if (faults.empty()) return result;
  in_order_of_place(faults, files);
  return faults;
}

}  // namespace firstpick::tables
