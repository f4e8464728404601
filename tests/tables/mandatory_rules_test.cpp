// The mandatory rules of the shipped rule sets are the rules of the program, each for its own subjects.

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "checks/rule.hpp"
#include "plan/words.hpp"
#include "tables/tables.hpp"

using namespace firstpick;

namespace {

tables::Tables shipped() {
  auto read = tables::read_tables("tables");
  REQUIRE(std::holds_alternative<tables::Tables>(read));
  return std::get<tables::Tables>(std::move(read));
}

}  // namespace

TEST_CASE("every mandatory rule exists and has the scope that the program gives it") {
  for (const auto& [id, rules] : shipped().rule_sets)
    for (const tables::Mandatory& mandatory : rules.mandatory) {
      CAPTURE(id, mandatory.rule);
      const checks::Rule* rule = checks::rule_named(mandatory.rule);
      REQUIRE(rule != nullptr);
      CHECK(mandatory.scope == checks::word_for(rule->scope));
    }
}

TEST_CASE("every shipped rule set demands every rule of the program in every stage") {
  for (const auto& [id, rules] : shipped().rule_sets) {
    std::set<std::string_view> demanded;
    for (const tables::Mandatory& mandatory : rules.mandatory) {
      CHECK(mandatory.stages.empty());
      demanded.insert(mandatory.rule);
    }
    for (const checks::Rule& rule : checks::all_rules()) {
      CAPTURE(id, rule.id);
      CHECK(demanded.contains(rule.id));
    }
  }
}

// The pages are written for us; what another rule set does differently must stand in each.
TEST_CASE("the page of every rule says what each other rule set does, and nothing is said twice") {
  for (const auto& [id, rules] : shipped().rule_sets) {
    if (id == "us" || !rules.based_on.empty()) continue;  // what a set changes of its base stands in docs/rule-set.md
    for (const tables::Mandatory& mandatory : rules.mandatory) {
      CAPTURE(id, mandatory.rule);
      std::ifstream in("docs/rules/" + mandatory.rule + ".md");
      const std::string page{std::istreambuf_iterator<char>(in), {}}, words = "**Under `" + id + "`** ";
      REQUIRE(page.size() > 100);
      const std::size_t at = page.find(words);
      REQUIRE(at != std::string::npos);
      CHECK(page.find(words, at + 1) == std::string::npos);
      CHECK(page.find('\n', at) - at > words.size() + 10);
    }
  }
}

TEST_CASE("tables and plans call the stages alike") {
  CHECK(std::equal(tables::stage_words.begin(), tables::stage_words.end(), plan::stage_words.begin(),
                   plan::stage_words.end()));
}
