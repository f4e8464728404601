#include "output/listings.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "checks/rule.hpp"
#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

bool chosen(const Source& s, std::string_view filter, bool unconfirmed_only) {
  if (unconfirmed_only && !s.unconfirmed()) return false;
  return filter.empty() || holds(s.id, filter) || holds(s.what, filter) || holds(s.title, filter) ||
         holds(s.table, filter);
}

std::string basis_words(const Source& s) {
  if (s.confirmed_by.empty()) return std::string(word_for(s.basis));
  return fmt::format("{}, confirmed by {} on {}", word_for(s.basis), s.confirmed_by, s.confirmed_on);
}

std::vector<std::string> demanded_by(const std::vector<RuleSetLine>& sets, std::string_view rule) {
  std::vector<std::string> ids;
  for (const RuleSetLine& set : sets)
    if (std::ranges::find(set.mandatory, rule) != set.mandatory.end()) ids.push_back(set.id);
  return ids;
}

}  // namespace

std::string tables_text(const std::vector<Source>& entries, std::string_view filter, bool unconfirmed_only,
                        std::size_t width) {
  std::string out, table;
  for (const Source& s : entries) {
    if (!chosen(s, filter, unconfirmed_only)) continue;
    if (s.table != table) {
      table = s.table;
      out += fmt::format("{}{}\n", out.empty() ? "" : "\n", printable(table));
    }
    out += paragraph("  ", "    ", printable(fmt::format("{} = {}", s.id, s.value_text)), width);
    out += paragraph("      ", "      ", printable(s.what), width);
    const std::string where = s.title.empty() ? "" : ": " + citation(s);
    out += paragraph("      ", "      ", printable(fmt::format("[{}]{}", basis_words(s), where)), width);
    if (!s.note.empty()) out += paragraph("      note: ", "      ", printable(s.note), width);
  }
  if (out.empty()) return "no entry matches\n";
  return out;
}

std::string tables_json(const std::vector<Source>& entries, std::string_view filter, bool unconfirmed_only) {
  Json all = Json::array();
  for (const Source& s : entries)
    if (chosen(s, filter, unconfirmed_only))
      all.push_back({{"table", s.table},
                     {"key", s.id},
                     {"symbol", s.symbol},
                     {"what", s.what},
                     {"value", s.value_text},
                     {"basis", word_for(s.basis)},
                     {"source", s.title},
                     {"locator", s.locator},
                     {"note", s.note},
                     {"confirmed_by", s.confirmed_by},
                     {"confirmed_on", s.confirmed_on}});
  return Json{{"format", 1}, {"entries", std::move(all)}}.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

std::string rules_text(const std::vector<RuleSetLine>& sets, std::string_view filter, std::size_t width) {
  std::string out;
  for (const checks::Rule& rule : checks::all_rules()) {
    if (!filter.empty() && !holds(rule.id, filter)) continue;
    out += paragraph("", "    ", fmt::format("{}: {}", rule.id, rule.guards), width);
    std::string by;
    for (const std::string& id : demanded_by(sets, rule.id)) by += (by.empty() ? "" : ", ") + id;
    out += paragraph("    ", "    ",
                     fmt::format("for each {}; {}; {}", checks::word_for(rule.scope), rule.source,
                                 by.empty() ? "demanded by no rule set" : "demanded by rule set " + printable(by)),
                     width);
  }
  if (out.empty()) return "no rule matches\n";
  if (filter.empty()) {
    out += "\nRule sets\n";
    for (const RuleSetLine& set : sets) out += paragraph("  ", "    ", printable(set.id + ": " + set.title), width);
  }
  return out;
}

std::string rules_json(const std::vector<RuleSetLine>& sets, std::string_view filter) {
  Json rules = Json::array(), listed = Json::array();
  for (const checks::Rule& rule : checks::all_rules())
    if (filter.empty() || holds(rule.id, filter))
      rules.push_back({{"rule", rule.id},
                       {"guards", rule.guards},
                       {"source", rule.source},
                       {"subject", checks::word_for(rule.scope)},
                       {"demanded_by", demanded_by(sets, rule.id)}});
  for (const RuleSetLine& set : sets) listed.push_back({{"id", set.id}, {"title", set.title}});
  return Json{{"format", 1}, {"rules", std::move(rules)}, {"rule_sets", std::move(listed)}}.dump(
             2, ' ', true, Json::error_handler_t::replace) +
         "\n";
}

}  // namespace firstpick::output
