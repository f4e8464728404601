// Hands the entries of one table to the code that knows which values there must be, each as a typed quantity.
//
// A missing value, a unit of another kind, a number outside its limit: a fault, and a value that is not a
// number. Values are used only when no file had a fault (read_tables), so that none of those can get out.
#pragma once

#include <limits>
#include <map>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "tables/entry.hpp"
#include "units/parse.hpp"

namespace firstpick::tables {

// What a number must be, whatever its source says.
enum class Limit {
  positive,
  at_least_one,  // a factor that may not make a load smaller or a strength larger
  at_most_one,   // more than 0, at most 1
  acute,         // an angle above 0 and below 90 degrees
  whole          // 1, 2, 3, ...
};

class EntryReader {
 public:
  // `path`: the file that a missing value is told of.
  EntryReader(const std::vector<Entry>& entries, std::string path, Faults& faults);

  // Every `of`, as the plan writes it, in order of first appearance.
  std::vector<std::string> words() const;

  template <class Q>
  Sourced<Q> quantity(std::string_view gives, Limit limit, std::string_view of = {}) {
    const Entry* entry = find(gives, of);
    const Q nothing = Q::from_value(std::numeric_limits<double>::quiet_NaN());
    if (!entry) return {nothing, {}};
    const double* number = number_of(*entry);
    if (!number) return {nothing, entry->source};
    const auto q = quantity_in<Q>(*number, entry->unit);
    if (q)
      check(*entry, *number, q->value(), limit);
    else
      refuse_unit(*entry, dimension_of<Q>());
    return {q.value_or(nothing), entry->source};
  }

  template <class Word>
  Sourced<Word> word(std::string_view gives, std::span<const std::pair<std::string_view, Word>> words) {
    const Entry* entry = find(gives, {});
    if (!entry) return {words.front().second, {}};
    const std::string* given = std::get_if<std::string>(&entry->value);
    std::vector<std::string_view> known;
    for (const auto& [text, value] : words) {
      if (given && *given == text) return {value, entry->source};
      known.push_back(text);
    }
    refuse_word(*entry, known);
    return {words.front().second, entry->source};
  }

  // Every `of` of the entries that give this, for tables with a free list of them.
  std::vector<std::string> words_of(std::string_view gives) const;

  bool has(std::string_view gives, std::string_view of = {}) const { return entries_.contains({gives, of}); }
  // Any entry whose name begins so: a group of values is there as a whole or not at all.
  bool has_any(std::string_view beginning) const;
  void fault(std::string_view gives, std::string_view of, std::string what, std::string help = {});

  // To be called last: every entry that nothing asked for.
  void refuse_others();

 private:
  using Key = std::pair<std::string_view, std::string_view>;  // gives, of

  const Entry* find(std::string_view gives, std::string_view of);
  const double* number_of(const Entry& entry);
  void check(const Entry& entry, double number, double si, Limit limit);
  void refuse_unit(const Entry& entry, Dimension needed);
  void refuse_word(const Entry& entry, const std::vector<std::string_view>& known);

  const std::vector<Entry>& all_;
  std::map<Key, const Entry*> entries_;
  std::set<std::pair<std::string, std::string>> asked_;
  std::string path_;
  Faults& faults_;
};

}  // namespace firstpick::tables
