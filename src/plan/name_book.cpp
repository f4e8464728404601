#include "plan/name_book.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "plan/words.hpp"

namespace firstpick::plan {
namespace {

constexpr std::size_t most_helped = 100;  // unknown names; a hint for each of thousands would take minutes

// What a use of this kind may name.
std::vector<Names> given_kinds(Names used) {
  if (used == Names::solid_or_direction) return {Names::solid};
  if (used == Names::insert_or_rigging_part) return {Names::insert, Names::rigging_part};
  return {used};
}

bool is_of(Names given, Names used) {
  const auto kinds = given_kinds(used);
  return std::ranges::find(kinds, given) != kinds.end();
}

std::string_view section_of(Names kind) {
  for (const Section& each : sections())
    for (const Key& key : each.keys)
      if (key.defines == given_kinds(kind).front()) return each.path;
  return {};
}

}  // namespace

std::string_view word_for(Names kind) {
  switch (kind) {
    case Names::none: return "";
    case Names::insert: return "insert";
    case Names::sling: return "sling";
    case Names::hardware: return "hardware";
    case Names::crane: return "crane";
    case Names::rigging: return "rigging";
    case Names::solid:
    case Names::solid_or_direction: return "solid";
    case Names::rigging_part: return "hook, beam point or sheave";
    case Names::beam: return "beam";
    case Names::insert_or_rigging_part: return "insert, beam point or sheave";
    case Names::serial: return "piece";
  }
  return "";
}

void NameBook::give(Names kind, const std::string& name, const toml::source_region& where) {
  const bool is_new = first_.try_emplace({kind, name}, where).second;
  (is_new ? given_ : given_again_).push_back({kind, name, where});
}

void NameBook::use(Names kind, const std::string& name, const toml::source_region& where) {
  used_.push_back({kind, name, where});
}

void NameBook::give_unreadable(Names kind) { unreadable_.insert(kind); }

bool NameBook::is_given(Names kind, const std::string& name) const {
  const bool is_direction = std::ranges::find(direction_words, name) != direction_words.end();
  const auto kinds = given_kinds(kind);
  return std::ranges::any_of(kinds, [&](Names each) { return first_.contains({each, name}); }) || (kind == Names::solid_or_direction && is_direction);
}

bool NameBook::has_unknown(Names kind) const {
  return std::ranges::any_of(
      used_, [&](const Entry& each) { return is_of(kind, each.kind) && !is_given(each.kind, each.name); });
}

void NameBook::report_unknown(const Entry& use, bool with_help, Faults& faults) const {
  std::vector<std::string_view> names;
  if (with_help)
    for (const Entry& each : given_)
      if (is_of(each.kind, use.kind)) names.push_back(each.name);
  if (use.kind == Names::solid_or_direction)
    names.insert(names.end(), direction_words.begin(), direction_words.end());
  const bool none = std::ranges::none_of(
      given_, [&](const Entry& each) { return is_of(each.kind, use.kind); });
  const bool no_parts = std::ranges::none_of(
      given_, [](const Entry& each) { return each.kind == Names::rigging_part; });
  const Names sought =
      use.kind == Names::insert_or_rigging_part && no_parts ? Names::insert : use.kind;
  faults.at(use.where, fmt::format("there is no {} {}", word_for(sought), in_quotes(use.name)),
            none ? fmt::format("the plan has no [[{}]]", section_of(use.kind)) : suggestion(use.name, names));
}

void NameBook::report(Faults& faults) const {
  for (const Entry& each : given_again_)
    faults.at(each.where,
              fmt::format("a second {} is named {}; the first is in line {}", word_for(each.kind),
                          in_quotes(each.name), faults.place_of(first_.at({each.kind, each.name})).line));
  std::size_t unknown = 0;
  for (const Entry& each : used_)
    if (!is_given(each.kind, each.name) &&
        std::ranges::none_of(given_kinds(each.kind), [&](Names kind) { return unreadable_.contains(kind); }))
      report_unknown(each, ++unknown <= most_helped, faults);
}

}  // namespace firstpick::plan
