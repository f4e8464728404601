#include "verification/coverage.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <stdexcept>

#include "checks/rule.hpp"
#include "tables/toml_file.hpp"

namespace firstpick::verification {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view test_ending = "_test.cpp", own_test = "coverage";

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> texts_of(const toml::table& table, std::string_view key) {
  std::vector<std::string> all;
  for (const toml::node& text : *table.get(key)->as_array()) all.push_back(text.value<std::string>().value());
  return all;
}

// The list at the end of the file of reasons; a number of it that a test holds after all is a fault.
void read_not_held(Covered& all) {
  const std::string file = "tests/verification/no_outside_check.toml";
  const toml::table read = std::get<toml::table>(tables::parse_toml(file, text_of(file)));
  for (const toml::node& node : *read.get("not_held")->as_array()) {
    const toml::table& one = *node.as_table();
    all.not_held.push_back({one.get("source")->value<std::string>().value(), texts_of(one, "numbers"),
                            one.get("unit")->value<std::string>().value(), one.get("why")->value<std::string>().value()});
  }
  for (const auto& test : fs::directory_iterator("tests/verification")) {
    const std::string name = test.path().filename().string();
    if (!name.ends_with(test_ending) || name.starts_with(own_test)) continue;
    const std::string text = text_of(test.path());
    for (const NotHeld& one : all.not_held)
      for (const std::string& number : one.numbers)
        if (text.find(number) != std::string::npos)
          all.faults.push_back(number + " is told as held by nothing, and stands in " + name);
  }
}

std::string not_held_table(const std::vector<NotHeld>& all) {
  std::string text = "\nNumbers of outside sources that were read, and that nothing is held to, because the program computes no such thing:\n\n"
                     "| source | numbers | why nothing is held to them |\n|---|---|---|\n";
  for (const NotHeld& one : all) {
    text += "| " + one.source + " | ";
    for (std::size_t i = 0; i < one.numbers.size(); ++i) text += (i == 0 ? "" : ", ") + one.numbers[i];
    text += " (" + one.unit + ") | " + one.why + " |\n";
  }
  return text;
}

std::string top_comment(const fs::path& file) {
  std::ifstream in(file);
  std::string text, line;
  while (std::getline(in, line) && line.starts_with("//")) text += (line.size() > 3 ? line.substr(3) : "") + "\n";
  return text;
}

// What stands behind `word` in a comment, with the indented lines below it.
std::string behind(std::string_view word, const std::string& comment) {
  std::istringstream lines(comment);
  std::string line, all;
  bool inside = false;
  while (std::getline(lines, line)) {
    if (line.starts_with(word)) {
      inside = true;
      all += line.substr(word.size()) + " ";
    } else if (inside && line.starts_with("         ")) {
      all += line + " ";
    } else {
      inside = false;
    }
  }
  return all;
}

std::vector<std::string> items(const std::string& list) {
  std::vector<std::string> all;
  std::istringstream parts(list);
  std::string part;
  while (std::getline(parts, part, ',')) {
    const std::size_t from = part.find_first_not_of(' ');
    if (from == std::string::npos) continue;
    all.push_back(part.substr(from, part.find_last_not_of(' ') + 1 - from));
  }
  return all;
}

class Collector {
 public:
  Collector(Covered& covered, const std::set<std::string>& rule_sets) : covered_(covered), rule_sets_(rule_sets) {}

  void add(const std::string& test, std::string item, ByRuleSet Coverage::*kind) {
    std::string rule_set;
    if (const std::size_t space = item.find(' '); space != std::string::npos) {
      rule_set = item.substr(0, space);
      item = item.substr(item.find_first_not_of(' ', space));  // the two may stand on two lines
      if (!rule_sets_.contains(rule_set)) {
        covered_.faults.push_back(test + " speaks of a rule set '" + rule_set + "', which there is not");
        return;
      }
    }
    Coverage* known = find(item);
    if (!known && item.starts_with("src/") && fs::exists(item)) {
      covered_.others.push_back({item, {}, {}, {}});
      known = &covered_.others.back();
    }
    if (!known) {
      covered_.faults.push_back(test + " checks '" + item + "', which is no rule, table or folder");
      return;
    }
    (known->*kind)[rule_set].push_back(test);
  }

  Coverage* find(const std::string& what) {
    for (auto* list : {&covered_.rules, &covered_.tables, &covered_.others})
      if (const auto found = std::ranges::find(*list, what, &Coverage::what); found != list->end()) return &*found;
    return nullptr;
  }

 private:
  Covered& covered_;
  const std::set<std::string>& rule_sets_;
};

std::string cell(const ByRuleSet& tests, const std::set<std::string>& rule_sets) {
  if (tests.empty()) return "-";
  const bool by_set = std::ranges::any_of(tests, [](const auto& some) { return !some.first.empty(); });
  std::string text;
  const auto add = [&](const std::string& lead, const std::vector<std::string>* names) {
    text += (text.empty() ? "" : "; ") + lead;
    if (!names) text += "-";
    for (std::size_t i = 0; names && i < names->size(); ++i) text += (i == 0 ? "" : ", ") + (*names)[i];
  };
  if (const auto any = tests.find(""); any != tests.end()) add("", &any->second);
  if (by_set)
    for (const std::string& id : rule_sets) {
      const auto own = tests.find(id);
      add("`" + id + "`: ", own == tests.end() ? nullptr : &own->second);
    }
  return text;
}

std::string table(const std::vector<Coverage>& rows, const std::string& head, bool with_reasons) {
  std::set<std::string> rule_sets;
  for (const Coverage& row : rows)
    for (const ByRuleSet* tests : {&row.outside, &row.computed})
      for (const auto& [id, names] : *tests)
        if (!id.empty()) rule_sets.insert(id);
  std::string text = "| " + head + " | from outside | computed beforehand |" + (with_reasons ? " why none from outside |" : "") +
                     "\n|---|---|---|" + (with_reasons ? "---|" : "") + "\n";
  for (const Coverage& row : rows) {
    text += "| " + row.what + " | " + cell(row.outside, rule_sets) + " | " + cell(row.computed, rule_sets) + " |";
    if (with_reasons) text += " " + (row.why_none.empty() ? std::string("-") : row.why_none) + " |";
    text += "\n";
  }
  return text;
}

void read_reasons(Claims& claims) {
  const std::string file = "tests/verification/no_outside_check.toml";
  auto parsed = tables::parse_toml(file, text_of(file));
  if (!std::holds_alternative<toml::table>(parsed)) throw std::runtime_error(file + " is no TOML");
  for (const toml::node& node : *std::get<toml::table>(parsed).get("none")->as_array()) {
    const std::string why = node.as_table()->get("why")->value<std::string>().value();
    for (const toml::node& of : *node.as_table()->get("of")->as_array())
      if (!claims.reasons.emplace(of.value<std::string>().value(), why).second)
        claims.twice.push_back(of.value<std::string>().value());
  }
}

}  // namespace

Covered covered(const Claims& claims, const std::vector<std::string>& rules, const std::vector<std::string>& tables,
                const std::set<std::string>& rule_sets) {
  Covered all;
  for (const std::string& rule : rules) all.rules.push_back({rule, {}, {}, {}});
  for (const std::string& file : tables) all.tables.push_back({file, {}, {}, {}});
  Collector collector(all, rule_sets);
  for (const auto& [test, comment] : claims.comments) {
    const auto outside = items(behind("Outside ", comment)), computed = items(behind("Computed ", comment));
    if (outside.empty() && computed.empty())
      all.faults.push_back(test + " does not say what it checks: '// Outside  ...' or '// Computed ...' in the comment at its top");
    for (const std::string& item : outside) collector.add(test, item, &Coverage::outside);
    for (const std::string& item : computed) collector.add(test, item, &Coverage::computed);
  }
  for (const std::string& what : claims.twice) all.faults.push_back(what + " is given two reasons");
  for (const auto& [what, why] : claims.reasons) {
    Coverage* known = collector.find(what);
    if (!known) all.faults.push_back("a reason is given for '" + what + "', which is no rule or table");
    else known->why_none = why;
  }
  for (const auto* list : {&all.rules, &all.tables})
    for (const Coverage& one : *list) {
      if (one.outside.empty() && one.why_none.empty())
        all.faults.push_back(one.what + " has neither a check from outside nor a reason why there is none");
      if (!one.outside.empty() && !one.why_none.empty())
        all.faults.push_back(one.what + " has a reason why there is no check from outside, and a check");
    }
  return all;
}

Covered coverage_of_source_tree() {
  Claims claims;
  for (const auto& file : fs::directory_iterator("tests/verification")) {
    const std::string name = file.path().filename().string();
    if (!name.ends_with(test_ending)) continue;
    const std::string test = name.substr(0, name.size() - test_ending.size());
    if (test != own_test) claims.comments[test] = top_comment(file.path());
  }
  read_reasons(claims);
  std::vector<std::string> rules, tables;
  for (const checks::Rule& rule : checks::all_rules()) rules.emplace_back(rule.id);
  rules.emplace_back("stage-load");     // not rules of the list, and pages of their own
  rules.emplace_back("rule-coverage");
  std::set<std::string> rule_sets;
  for (const auto& file : fs::recursive_directory_iterator("tables")) {
    if (file.path().extension() != ".toml" || file.path().filename() == "sources.toml") continue;
    tables.push_back(file.path().generic_string());
    if (tables.back().starts_with("tables/rules/")) rule_sets.insert(file.path().stem().string());
  }
  std::ranges::sort(tables);
  Covered all = covered(claims, rules, tables, rule_sets);
  read_not_held(all);
  return all;
}

std::string coverage_tables(const Covered& covered) {
  std::size_t with = 0;
  for (const Coverage& rule : covered.rules) with += rule.outside.empty() ? 0U : 1U;
  return "Each rule and each table file against the tests below that hold numbers from outside (printed by a source, quoted from\n"
         "one, or by another program) and against numbers that we computed beforehand, which are evidence of regression only.\n"
         "`us`: and `eu`: where a test checks what that rule set does. " + std::to_string(with) + " of " +
         std::to_string(covered.rules.size()) + " rules have a check from outside; the reasons of the\n"
         "others are in `tests/verification/no_outside_check.toml`.\n\n" +
         table(covered.rules, "rule", true) + "\n" + table(covered.tables, "table", true) + "\n" +
         table(covered.others, "what else", false) +
         (covered.not_held.empty() ? std::string() : not_held_table(covered.not_held));
}

}  // namespace firstpick::verification
