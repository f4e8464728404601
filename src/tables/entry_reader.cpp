#include "tables/entry_reader.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "units/unit_list.hpp"

namespace firstpick::tables {
namespace {

// "'adhesion' of 'steel-oiled'"
std::string name_of(std::string_view gives, std::string_view of) {
  return of.empty() ? fmt::format("'{}'", gives) : fmt::format("'{}' of '{}'", gives, of);
}

// A unit of that dimension, for the coefficients that have no kind of their own.
std::string_view unit_like(Dimension needed) {
  if (needed == dimension_of<RootStress>()) return "psi^0.5";
  if (needed == dimension_of<BreakoutCoefficient>()) return "lbf/(psi^0.5 in^1.5)";
  if (needed == dimension_of<DeepBreakoutCoefficient>()) return "lbf/(psi^0.5 in^(5/3))";
  return "s/m";
}

std::string_view words_for(Limit limit) {
  switch (limit) {
    case Limit::positive: return "more than 0";
    case Limit::at_least_one: return "at least 1";
    case Limit::at_most_one: return "more than 0 and at most 1";
    case Limit::acute: return "between 0 and 90 degrees";
    case Limit::whole: return "a whole number, at least 1";
  }
  return "more than 0";
}

bool is_within(double si, Limit limit) {
  switch (limit) {
    case Limit::positive: return si > 0.0;
    case Limit::at_least_one: return si >= 1.0;
    case Limit::at_most_one: return si > 0.0 && si <= 1.0;
    case Limit::acute: return si > 0.0 && si < in(radian, 90.0 * deg);
    case Limit::whole: return si >= 1.0 && std::floor(si) == si;
  }
  return false;
}

}  // namespace

EntryReader::EntryReader(const std::vector<Entry>& entries, std::string path, Faults& faults)
    : all_(entries), path_(std::move(path)), faults_(faults) {
  for (const Entry& entry : all_) {
    const bool incomplete = entry.gives.empty() || (entry.of.empty() && !entry.file->has_own_values());
    if (incomplete) continue;  // told when it was read
    const auto [same, is_new] = entries_.emplace(Key{entry.gives, entry.of}, &entry);
    if (!is_new)
      faults_.push_back(
          entry.file->fault(entry.gives_at,
                            fmt::format("{} is given by '{}' and by '{}'", name_of(entry.gives, entry.of),
                                        same->second->source.id, entry.source.id),
                            fmt::format("to replace a value in the plant's table, use its id: \"{}\"",
                                        same->second->source.id)));
  }
}

std::vector<std::string> EntryReader::words() const {
  std::vector<std::string> all;
  for (const Entry& entry : all_)
    if (!entry.of.empty() && std::find(all.begin(), all.end(), entry.of) == all.end())
      all.push_back(entry.of);
  return all;
}

bool EntryReader::has_any(std::string_view beginning) const {
  return std::ranges::any_of(entries_, [&](const auto& one) { return one.first.first.starts_with(beginning); });
}

std::vector<std::string> EntryReader::words_of(std::string_view gives) const {
  std::vector<std::string> all;
  for (const auto& [key, entry] : entries_)
    if (key.first == gives) all.emplace_back(key.second);
  return all;
}

const Entry* EntryReader::find(std::string_view gives, std::string_view of) {
  asked_.emplace(gives, of);
  const auto found = entries_.find({gives, of});
  if (found != entries_.end()) return found->second;
  faults_.push_back({path_, {}, fmt::format("no entry gives {}", name_of(gives, of)), {}});
  return nullptr;
}

const double* EntryReader::number_of(const Entry& entry) {
  const double* number = std::get_if<double>(&entry.value);
  if (!number && std::holds_alternative<std::string>(entry.value))
    faults_.push_back(
        entry.file->fault(entry.value_at, fmt::format("{} is a number", name_of(entry.gives, entry.of))));
  return number;
}

void EntryReader::check(const Entry& entry, double number, double si, Limit limit) {
  if (is_within(si, limit)) return;
  faults_.push_back(entry.file->fault(
      entry.value_at,
      fmt::format("{} must be {}, not {}", name_of(entry.gives, entry.of), words_for(limit), number)));
}

void EntryReader::refuse_unit(const Entry& entry, Dimension needed) {
  if (entry.unit.empty() || !std::isfinite(std::get<double>(entry.value))) return;  // told when it was read
  const QuantityKind* kind = find_kind(needed);
  const std::string name = name_of(entry.gives, entry.of);
  faults_.push_back(
      entry.file->fault(entry.unit_at,
                        kind ? fmt::format("{} is {}: '{}' is not its unit", name, kind->name, entry.unit)
                             : fmt::format("'{}' is not the unit of {}", entry.unit, name),
                        needed == Dimension{} ? "write \"1\" or \"%\""
                        : kind                ? fmt::format("write {}", kind->units)
                               : fmt::format("write a unit such as \"{}\"", unit_like(needed))));
}

void EntryReader::refuse_word(const Entry& entry, const std::vector<std::string_view>& known) {
  if (std::holds_alternative<std::monostate>(entry.value)) return;  // told when it was read
  const std::string* given = std::get_if<std::string>(&entry.value);
  const std::string name = name_of(entry.gives, entry.of);
  faults_.push_back(entry.file->fault(
      entry.value_at,
      given ? fmt::format("{} cannot be '{}'", name, *given) : fmt::format("{} is a word", name),
      suggestion(given ? std::string_view(*given) : "", known)));
}

void EntryReader::fault(std::string_view gives, std::string_view of, std::string what, std::string help) {
  const auto found = entries_.find({gives, of});
  if (found == entries_.end()) return;  // told when it was asked for
  faults_.push_back(found->second->file->fault(found->second->value_at, std::move(what), std::move(help)));
}

void EntryReader::refuse_others() {
  for (const auto& [key, entry] : entries_) {
    const auto& [gives, of] = key;
    if (asked_.contains({std::string(gives), std::string(of)})) continue;
    std::vector<std::string_view> names, words;
    for (const auto& [name, word] : asked_) {
      if (names.empty() || names.back() != name) names.push_back(name);
      if (name == gives) words.push_back(word);
    }
    if (words.empty())
      faults_.push_back(entry->file->fault(
          entry->gives_at, fmt::format("nothing reads a value '{}' here", gives), suggestion(gives, names)));
    else if (of.empty())
      faults_.push_back(entry->file->fault(entry->gives_at, fmt::format("'{}' needs an 'of'", gives),
                                           suggestion(of, words)));
    else
      faults_.push_back(entry->file->fault(
          entry->of_at, fmt::format("nothing reads {}", name_of(gives, of)),
          words == std::vector<std::string_view>{""} ? "leave 'of' out" : suggestion(of, words)));
  }
}

}  // namespace firstpick::tables
