#include "unit/plan/key_table.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "plan/name_book.hpp"
#include "plan/words.hpp"

namespace firstpick::tests {

namespace {

using namespace plan;

std::string words(const Key& key) {
  if (const auto table = table_of(key.words); !table.empty()) return fmt::format("a word of `{}`", table);
  std::string list;
  for (const std::string_view word : fixed_words(key.words))
    list += fmt::format("{}`\"{}\"`", list.empty() ? "" : ", ", word);
  return list;
}

std::string name(const Key& key) {
  if (key.refers_to == Names::solid_or_direction) return "name of a solid, or a direction";
  if (key.refers_to != Names::none)
    return fmt::format("name of {} {}", key.refers_to == Names::insert ? "an" : "a", word_for(key.refers_to));
  return key.defines != Names::none ? "name of its own" : "name";
}

std::string noun(const Key& key) {
  switch (key.kind) {
    case Kind::length: return "length";
    case Kind::area: return "area";
    case Kind::force: return "force or weight";
    case Kind::stress: return "stress";
    case Kind::density: return "density";
    case Kind::angle: return "angle";
    case Kind::speed: return "speed";
    case Kind::duration: return "duration";
    case Kind::temperature: return "temperature";
    case Kind::share: return "share in %";
    case Kind::number: return "plain number";
    case Kind::format: return "whole number";
    case Kind::whole: return "whole number, 1 to 1000";
    case Kind::name: return name(key);
    case Kind::text: return "text";
    case Kind::word: return words(key);
    case Kind::specimen: return "specimen";
    case Kind::path: return "file name";
    case Kind::yes_no: return "`true` or `false`";
    case Kind::moment: return "date and time";
    case Kind::date: return "date";
  }
  return "";
}

std::string counted(Count count, const std::string& one) {
  switch (count) {
    case Count::one: return one;
    case Count::two: return "2 of: " + one;
    case Count::three: return "3 of: " + one;
    case Count::two_points: return "2 points, each 3 of: " + one;
    case Count::path: return "list of 2 or more points, each 3 of: " + one;
    case Count::list: return "list of: " + one;
    case Count::one_or_list: return one + "; or a list";
    case Count::points: return "list of 3 or more points, each 2 of: " + one;
    case Count::point_lists: return "list of such outlines";
    case Count::groups: return "list of groups, each of 2 or more: " + one;
  }
  return "";
}

std::string_view limit(Limit limit) {
  switch (limit) {
    case Limit::none: return "";
    case Limit::more_than_zero: return ", more than 0";
    case Limit::factor_of_safety: return ", 1 to 12";
    case Limit::friction: return ", above 0 to 1";
    case Limit::not_negative: return ", 0 or more";
    case Limit::below_100_percent: return ", 0 to less than 100 %";
    case Limit::at_least_one: return ", 1 or more";
    case Limit::up_to_90_deg: return ", 0 to 90 deg";
    case Limit::up_to_180_deg: return ", 0 to 180 deg";
  }
  return "";
}

std::string shapes(const Key& key) {
  std::string list;
  for (const std::string_view shape : key.shapes)
    list += fmt::format("{}{}", list.empty() ? "" : ", ", shape);
  return list.empty() ? "" : " (" + list + ")";
}

}  // namespace

std::string key_table(const Section& section) {
  if (section.keys.empty()) return "It has no keys of its own.\n";
  std::string table = "| key | value | without it | meaning | example |\n|---|---|---|---|---|\n";
  for (const Key& key : section.keys)
    table += fmt::format("| `{}`{} | {}{} | {} | {} | `{}` |\n", key.name, shapes(key),
                         counted(key.count, noun(key)), limit(key.limit),
                         key.required ? "**required**" : std::string(key.absent), key.doc, key.example);
  return table;
}

std::string with_key_tables(std::string text, const SectionList& list) {
  for (const Section& section : list) {
    const std::string begin = "<!-- keys of " + heading(section) + " -->\n", end = "<!-- end -->";
    INFO(begin);
    const std::size_t at = text.find(begin);
    REQUIRE(at != std::string::npos);
    const std::size_t from = at + begin.size(), to = text.find(end, from);
    REQUIRE(to != std::string::npos);
    const std::string use = section.required   ? "Required. "
                            : section.repeated ? fmt::format("Without any: {}. ", section.absent)
                                               : fmt::format("Without it: {}. ", section.absent);
    text.replace(from, to - from,
                 fmt::format("\n{}\n\n{}{}\n\n", section.doc, use.substr(0, use.size() - 1),
                             "\n\n" + key_table(section).substr(0, key_table(section).size() - 1)));
  }
  return text;
}

}  // namespace firstpick::tests
