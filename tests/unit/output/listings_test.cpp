// `firstpick tables` and `firstpick rules`: every entry and every rule is there, with where it comes from.

#include <catch2/catch.hpp>

#include <sstream>
#include <string>

#include <nlohmann/json.hpp>

#include "checks/rule.hpp"
#include "output/listings.hpp"
#include "output/text_layout.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::output;
using namespace firstpick::tests;

namespace {

using Json = nlohmann::ordered_json;

Source entry(const std::string& id, const std::string& table, Basis basis) {
  return {.id = id,
          .symbol = "k",
          .what = "what " + id + " is",
          .title = "Document of " + id,
          .locator = "cl. 7",
          .basis = basis,
          .note = "",
          .value_text = "24 psi",
          .table = table,
          .confirmed_by = "",
          .confirmed_edition = "",
          .confirmed_on = ""};
}

std::vector<Source> entries() {
  std::vector<Source> all{entry("a-2018.k", "first.toml", Basis::published), entry("b-2018.k", "first.toml", Basis::from_memory),
                          entry("c-2018.k", "second.toml", Basis::from_memory)};
  all[2].confirmed_by = "the plant's engineer";
  all[2].confirmed_on = "2026-01-31";
  all[1].note = "two sources disagree";
  return all;
}

const std::vector<RuleSetLine> sets{{"us", "Rules of one country", {"sling-overload", "crane-overload"}},
                                    {"eu", "Rules of another", {"sling-overload"}}};

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("tables: every entry with value, meaning, basis, source and note, under its file") {
  const std::string text = tables_text(entries(), "", false, 400);  // wide: no title is broken over two lines
  for (const Source& source : entries()) {
    CHECK(holds(text, source.id + " = 24 psi"));
    CHECK(holds(text, source.what));
    CHECK(holds(text, source.title));
  }
  CHECK(holds(text, "first.toml"));
  CHECK(holds(text, "second.toml"));
  CHECK(holds(text, "[published]"));
  CHECK(holds(text, "two sources disagree"));
  CHECK(holds(text, "confirmed by the plant's engineer on 2026-01-31"));
}

TEST_CASE("tables: --unconfirmed leaves those from memory that nobody has confirmed") {
  const std::string text = tables_text(entries(), "", true, 80);
  CHECK_FALSE(holds(text, "a-2018.k"));
  CHECK(holds(text, "b-2018.k"));
  CHECK_FALSE(holds(text, "c-2018.k"));
  CHECK(Json::parse(tables_json(entries(), "", true))["entries"].size() == 1);
}

TEST_CASE("tables: a word leaves the entries that hold it, and an answer where none does") {
  CHECK_FALSE(holds(tables_text(entries(), "second", false, 80), "a-2018.k"));
  CHECK(holds(tables_text(entries(), "second", false, 80), "c-2018.k"));
  CHECK_FALSE(tables_text(entries(), "no such word", false, 80).empty());
  CHECK(Json::parse(tables_json(entries(), "no such word", false))["entries"].empty());
}

TEST_CASE("tables: JSON has every entry with its provenance") {
  const Json json = Json::parse(tables_json(entries(), "", false));
  CHECK(json["format"] == 1);
  REQUIRE(json["entries"].size() == 3);
  CHECK(json["entries"][1]["key"] == "b-2018.k");
  CHECK(json["entries"][1]["basis"] == "from memory");
  CHECK(json["entries"][1]["value"] == "24 psi");
  CHECK(json["entries"][1]["source"] == "Document of b-2018.k");
  CHECK(json["entries"][2]["confirmed_by"] == "the plant's engineer");
}

TEST_CASE("rules: every rule is listed with what it guards, its subject and who demands it") {
  const std::string text = rules_text(sets, "", 80);
  const Json json = Json::parse(rules_json(sets, ""));
  REQUIRE(json["rules"].size() == checks::all_rules().size());
  for (std::size_t i = 0; i < checks::all_rules().size(); ++i) {
    const checks::Rule& rule = checks::all_rules()[i];
    CHECK(holds(text, std::string(rule.id) + ": "));
    CHECK(json["rules"][i]["rule"] == std::string(rule.id));
    CHECK(json["rules"][i]["guards"] == std::string(rule.guards));
    CHECK(json["rules"][i]["subject"] == std::string(checks::word_for(rule.scope)));
  }
  CHECK(holds(text, "Rules of another"));
  CHECK(json["rule_sets"].size() == 2);
}

TEST_CASE("rules: who demands a rule, and that nobody does") {
  CHECK(holds(rules_text(sets, "sling-overload", 200), "demanded by rule set us, eu"));
  CHECK(holds(rules_text(sets, "crane-overload", 200), "demanded by rule set us"));
  CHECK(holds(rules_text(sets, "insert-pryout", 200), "demanded by no rule set"));
  CHECK(holds(rules_text(sets, "no-such-rule", 200), "no rule matches"));
  CHECK(Json::parse(rules_json(sets, "sling-overload"))["rules"][0]["demanded_by"] == Json::array({"us", "eu"}));
}

TEST_CASE("listings: no line is wider than asked, hostile texts are harmless") {
  auto hostile = entries();
  for (Source& source : hostile)
    for (std::string* text : {&source.id, &source.what, &source.title, &source.locator, &source.value_text, &source.note,
                              &source.confirmed_by})
      *text += hostile_text;
  auto hostile_sets = sets;
  for (RuleSetLine& set : hostile_sets) set.id += hostile_text, set.title += hostile_text;
  for (const std::size_t width : {60U, 80U, 100U})
    for (const std::string& text : {tables_text(hostile, "", false, width), rules_text(sets, "", width),
                                    rules_text(hostile_sets, "", width), tables_text(entries(), "", false, width)}) {
      CHECK_FALSE(holds(text, "\x1b"));
      CHECK_FALSE(holds(text, "\r"));
      std::istringstream in(text);
      for (std::string line; std::getline(in, line);) {
        CAPTURE(line);
        CHECK(columns_of(line) <= width);
      }
    }
  CHECK(Json::parse(tables_json(hostile, "", false))["entries"].size() == 3);
  CHECK_FALSE(Json::parse(rules_json(hostile_sets, ""))["rules"].empty());
}
