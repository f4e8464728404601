// A rule set that is based on another: what it writes counts, all else is that of its base.

#include <catch2/catch.hpp>

#include <algorithm>

#include "unit/tables/written_tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

using Texts = std::vector<std::string>;

std::string heading(const std::string& id, const std::string& base) {
  return "[rule_set]\nid = \"" + id + "\"\ntitle = \"Made for the test\"\nbased_on = \"" + base +
         "\"\nedition = \"none\"\ncautions = [\"A caution of the north yard.\"]\n";
}

std::string entry(const std::string& id, const std::string& gives, const std::string& value) {
  return "\n[[entry]]\nid = \"" + id + "\"\ngives = \"" + gives +
         "\"\nsymbol = \"x\"\nwhat = \"a value made for the test\"\nvalue = " + value +
         "\nunit = \"1\"\nbasis = \"choice\"\nnote = \"Made for the test.\"\n";
}

}  // namespace

TEST_CASE("a based rule set takes every value, model and rule of its base but what it writes itself") {
  const WrittenTables tables;
  tables.write("plant/rules/north.toml", heading("north", "eu") + entry("north.floor", "load_floor", "1.6") +
                                             entry("north.factor", "insert_factor", "3.5"));
  const Tables read = tables.good();
  const RuleSet& north = read.rule_sets.at("north");
  const RuleSet& eu = read.rule_sets.at("eu");
  CHECK(north.based_on == "eu");
  CHECK(north.load_floor.value().value.value() == 1.6);
  CHECK(north.insert_factor.value.value() == 3.5);
  CHECK(north.insert_factor.source.table == "rules/north.toml of the plant");
  CHECK_FALSE(eu.load_floor);
  CHECK(eu.insert_factor.value.value() == 3.0);
  CHECK(north.headed.en);
  CHECK(north.headed.en->k1_cracked.value == eu.headed.en->k1_cracked.value);
  CHECK(north.cracking.en);
  CHECK(north.mandatory.size() == eu.mandatory.size());
  CHECK(north.dynamic_factor.at("haul").value == eu.dynamic_factor.at("haul").value);
}

TEST_CASE("what is its own is told first of its cautions, then its own cautions, then those of the base") {
  const WrittenTables tables;
  tables.write("plant/rules/north.toml", heading("north", "eu") + entry("north.floor", "load_floor", "1.6"));
  const Tables read = tables.good();
  const Texts& told = read.rule_sets.at("north").cautions;
  REQUIRE(told.size() == read.rule_sets.at("eu").cautions.size() + 2);
  CHECK(told[0] == "Rule set 'north' is rule set 'eu' with one value of its own and nothing else: load_floor.");
  CHECK(told[1] == "A caution of the north yard.");
  CHECK(told[2] == read.rule_sets.at("eu").cautions.front());
}

TEST_CASE("a base that is not there, one that has a base itself, and models of its own are refused") {
  const WrittenTables tables;
  tables.write("plant/rules/north.toml", heading("north", "eu2"));
  CHECK(tables.faults() == Texts{"plant/rules/north.toml: based_on: there is no rule set 'eu2' (did you mean 'eu'?)"});
  tables.write("plant/rules/north.toml", heading("north", "strength-by-mass"));
  CHECK(tables.faults() == Texts{"plant/rules/north.toml: based_on: 'strength-by-mass' is itself based on another rule set "
                                 "(name 'us', and write what is to be changed)"});
  tables.write("plant/rules/north.toml", heading("north", "eu") + "insert_model = \"aci-318-19\"\n");
  REQUIRE(tables.faults().size() == 1);
  CHECK(tables.faults().front().find("insert_model") != std::string::npos);
}

TEST_CASE("its own values stand once, are known, and what belongs together stands together") {
  const WrittenTables tables;
  tables.write("plant/rules/north.toml", heading("north", "eu") + entry("north.a", "load_floor", "1.6") +
                                             entry("north.b", "load_floor", "1.7"));
  CHECK(std::ranges::any_of(tables.faults(), [](const std::string& fault) {
    return fault.find("'load_floor' is given by 'north.a' and by 'north.b'") != std::string::npos;
  }));
  tables.write("plant/rules/north.toml", heading("north", "eu") + entry("north.a", "load_flor", "1.6"));
  CHECK(tables.faults().front().find("load_flor") != std::string::npos);
  tables.write("plant/rules/north.toml", heading("north", "eu") + entry("north.a", "load_floor", "0.9"));
  CHECK(tables.faults().front().find("at least 1") != std::string::npos);
  tables.replace("rules/strength-by-mass.toml", "gives = \"heavy.above\"", "gives = \"heavy.over\"");
  tables.remove("plant/rules/north.toml");
  CHECK(std::ranges::any_of(tables.faults(), [](const std::string& fault) {
    return fault.find("no entry gives 'heavy.above'") != std::string::npos;
  }));
}

TEST_CASE("a rule that must answer in the base cannot be named again, and a change of the base reaches what is based on it") {
  const WrittenTables tables;
  tables.write("plant/rules/north.toml",
               heading("north", "eu") + "\n[[mandatory]]\nrule = \"sling-angle\"\nscope = \"leg\"\n");
  CHECK(tables.faults() == Texts{"plant/rules/north.toml: 'sling-angle' is mandatory in rules/eu.toml already"});
  tables.remove("plant/rules/north.toml");
  const double before = tables.good().rule_sets.at("strength-by-mass").insert_factor.value.value();
  tables.write("plant/rules/us.toml", entry("29-cfr-1926-704.insert_factor", "insert_factor", "4.5"));
  CHECK(before == 4.0);
  CHECK(tables.good().rule_sets.at("strength-by-mass").insert_factor.value.value() == 4.5);
}
