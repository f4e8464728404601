// A rule set from which anything is missing is refused, and the fault names what: every entry of every shipped rule set taken
// away in turn, and every field that tells where an entry comes from. All in memory.

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "tables/entry.hpp"
#include "tables/entry_reader.hpp"
#include "tables/read_rule_set.hpp"
#include "tables/toml_file.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

// What a rule set may leave out: without a multiplier a plan that names its product is HOLD, and the other two are parts of
// some load models and declarations only.
const std::set<std::string> may_be_left_out = {"bending_multiplier", "load_floor", "rating_basis"};

std::string text_of(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  REQUIRE(stream.good());
  return {std::istreambuf_iterator<char>(stream), {}};
}

toml::table parsed(const std::string& file, const std::string& text) {
  auto read = parse_toml(file, text);
  REQUIRE(std::holds_alternative<toml::table>(read));
  return std::get<toml::table>(std::move(read));
}

SourceList shipped_sources() {
  const std::string text = text_of("tables/sources.toml");
  SourceList sources;
  Faults faults;
  read_sources(TableFile("sources.toml", "sources.toml", false, parsed("sources.toml", text), text), sources, faults);
  REQUIRE(faults.empty());
  return sources;
}

struct WrittenRules {
  std::string name, text;
  toml::table root;
};

std::vector<WrittenRules> shipped_rule_sets() {
  std::vector<WrittenRules> all;
  for (const auto& file : std::filesystem::directory_iterator("tables/rules")) {
    const std::string name = "rules/" + file.path().filename().string();
    const std::string text = text_of("tables/" + name);
    if (text.find("\nbased_on = ") != std::string::npos) continue;  // what it leaves out is that of its base
    all.push_back({name, text, parsed(name, text)});
  }
  REQUIRE(all.size() >= 2);
  return all;
}

Faults faults_of(const TableFile& file, const std::vector<Entry>& entries) {
  Faults faults;
  EntryReader reader(entries, file.path(), faults);
  read_rule_set(file, nullptr, reader, faults);
  return faults;
}

std::string told(const Entry& entry) {
  return "no entry gives '" + entry.gives + "'" + (entry.of.empty() ? "" : " of '" + entry.of + "'");
}

// The fields without which an entry has no value or no known origin.
std::vector<std::string> needed_fields(const toml::table& entry) {
  std::vector<std::string> fields = {"id", "gives", "symbol", "what", "value", "basis"};
  const std::string basis = entry.get("basis")->value<std::string>().value();
  const bool was_read = basis == "published" || basis == "quoted";
  fields.emplace_back(was_read ? "locator" : "note");
  if (basis != "choice") fields.emplace_back("source");
  if (!entry.get("value")->is_string()) fields.emplace_back("unit");
  return fields;
}

}  // namespace

TEST_CASE("every entry of a rule set is needed: without any one of them it is refused, and the fault names it") {
  const SourceList sources = shipped_sources();
  for (const WrittenRules& rules : shipped_rule_sets()) {
    const TableFile file(rules.name, rules.name, false, rules.root, rules.text);
    Faults faults;
    const std::vector<Entry> entries = read_entries(file, &sources, faults);
    REQUIRE(faults.empty());
    REQUIRE(faults_of(file, entries).empty());
    REQUIRE(entries.size() > 80);
    std::size_t left_out = 0;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      CAPTURE(rules.name, entries[i].source.id, entries[i].gives, entries[i].of);
      std::vector<Entry> rest = entries;
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      const Faults found = faults_of(file, rest);
      if (may_be_left_out.contains(entries[i].gives)) {
        ++left_out;
        CHECK(found.empty());
        continue;
      }
      const bool is_named = std::ranges::any_of(found, [&](const Diagnostic& fault) {
        return fault.file == rules.name && fault.what == told(entries[i]);
      });
      CHECK(is_named);
      CHECK(found.size() >= 1);
      for (const Diagnostic& fault : found) {  // nothing that is there is blamed
        CAPTURE(fault.what);
        CHECK(fault.what.find("no entry gives") != std::string::npos);
      }
    }
    CHECK(left_out < entries.size() / 4);
  }
}

TEST_CASE("without its value, its basis or its source an entry of a rule set is refused at its own place") {
  const SourceList sources = shipped_sources();
  for (const WrittenRules& rules : shipped_rule_sets()) {
    const std::size_t count = rules.root.get("entry")->as_array()->size();
    for (std::size_t i = 0; i < count; ++i) {
      for (const std::string& field : needed_fields(*rules.root.get("entry")->as_array()->get(i)->as_table())) {
        toml::table root = rules.root;
        toml::array one;  // this entry alone: the others are not what is asked about
        one.push_back(*root.get("entry")->as_array()->get(i)->as_table());
        root.insert_or_assign("entry", std::move(one));
        root.get("entry")->as_array()->get(0)->as_table()->erase(field);
        const TableFile file(rules.name, rules.name, false, std::move(root), rules.text);
        Faults faults;
        read_entries(file, &sources, faults);
        CAPTURE(rules.name, i, field);
        REQUIRE_FALSE(faults.empty());
        CHECK(faults.front().file == rules.name);
        const std::string id = field == "id" ? "" : rules.root.get("entry")->as_array()->get(i)->as_table()->get("id")
                                                        ->value<std::string>().value();
        CAPTURE(faults.front().what, id);
        CHECK(faults.front().what.find("'" + field + "'") != std::string::npos);
      }
    }
  }
}

TEST_CASE("every value of a rule set has a document or a reason, and a word for how sure it is") {
  const SourceList sources = shipped_sources();
  for (const WrittenRules& rules : shipped_rule_sets()) {
    const TableFile file(rules.name, rules.name, false, rules.root, rules.text);
    Faults faults;
    for (const Entry& entry : read_entries(file, &sources, faults)) {
      CAPTURE(rules.name, entry.source.id);
      CHECK_FALSE(entry.source.title.empty());
      CHECK_FALSE(word_for(entry.source.basis).empty());
      CHECK((entry.source.locator.size() > 2 || entry.source.note.size() > 10));
      CHECK((entry.source.basis != Basis::choice || entry.source.note.size() > 10));
    }
    CHECK(faults.empty());
  }
}
