// A plant's own directory replaces values, confirms them, and adds rule sets; nothing of it goes unread or
// unnoticed.

#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "unit/tables/written_tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

using Texts = std::vector<std::string>;

const std::string confirmed =
    "[[entry]]\n"
    "id = \"cen-tr-15728.q_adh_steel_oiled\"\n"
    "of = \"steel-oiled\"\n"
    "gives = \"adhesion\"\n"
    "symbol = \"q_adh\"\n"
    "what = \"adhesion of oiled steel\"\n"
    "value = 1.5\n"
    "unit = \"kN/m2\"\n"
    "basis = \"from memory\"\n"
    "source = \"cen-tr-15728\"\n"
    "note = \"measured at our form 7\"\n";
const std::string confirmation =
    "confirmed_by = \"engineer of record\"\nedition = \"2016\"\nconfirmed_on = 2026-01-31\n";

std::string own_rule_set(const WrittenTables& tables, const std::string& id) {
  std::string text = tables.text_of("rules/us.toml");
  return text.replace(text.find("id = \"us\""), 9, "id = \"" + id + "\"");
}

}  // namespace

TEST_CASE("an entry of the same id replaces value and provenance, and is listed") {
  const WrittenTables tables;
  const Tables shipped = tables.good();
  CHECK(shipped.overridden.empty());
  tables.write("plant/form-faces.toml", confirmed + confirmation);
  const Tables read = tables.good();
  const auto& adhesion = read.form_faces.at("steel-oiled").adhesion;
  CHECK(in(kPa, adhesion.value) == Approx(1.5));
  CHECK(adhesion.source.note == "measured at our form 7");
  CHECK(adhesion.source.value_text == "1.5 kN/m2");
  CHECK(adhesion.source.table == "form-faces.toml of the plant");
  CHECK(adhesion.source.confirmed_by == "engineer of record");
  CHECK(adhesion.source.confirmed_edition == "2016");
  CHECK(adhesion.source.confirmed_on == "2026-01-31");
  CHECK_FALSE(adhesion.source.unconfirmed());
  CHECK(shipped.form_faces.at("steel-oiled").adhesion.source.unconfirmed());
  CHECK(read.overridden == Texts{"cen-tr-15728.q_adh_steel_oiled"});
  CHECK(read.entries.size() == shipped.entries.size());
  CHECK(read.form_faces.size() == shipped.form_faces.size());
  CHECK(read.content != shipped.content);
  CHECK(read.content.find("measured at our form 7") != std::string::npos);
}

TEST_CASE("a value that is replaced but not confirmed stays unconfirmed") {
  const WrittenTables tables;
  tables.write("plant/form-faces.toml", confirmed);
  CHECK(tables.good().form_faces.at("steel-oiled").adhesion.source.unconfirmed());
}

TEST_CASE("a confirmation is whole or refused") {
  const WrittenTables tables;
  const std::string help = " (confirmed_by (who), edition (of the document in hand), confirmed_on (day))";
  tables.write("plant/form-faces.toml", confirmed + "confirmed_by = \"engineer of record\"\n");
  CHECK(tables.faults() ==
        Texts{"plant/form-faces.toml:12:1: a confirmation needs 'edition' too" + help,
              "plant/form-faces.toml:12:1: a confirmation needs 'confirmed_on' too" + help});
  tables.write("plant/form-faces.toml",
               confirmed + "confirmed_by = \"x\"\nedition = \"y\"\nconfirmed_on = \"today\"\n");
  CHECK(tables.faults() ==
        Texts{"plant/form-faces.toml:14:16: 'confirmed_on' is a date without quotes: 2026-01-31"});
}

TEST_CASE("an entry must be whole, also one that only confirms") {
  const WrittenTables tables;
  tables.write("plant/form-faces.toml",
               "[[entry]]\nid = \"cen-tr-15728.q_adh_steel_oiled\"\n" + confirmation);
  const Texts found = tables.faults();
  REQUIRE(found.size() > 1);
  CHECK(found[0].starts_with("plant/form-faces.toml:1:1: [[entry]] has no "));
}

TEST_CASE("an entry cannot turn an id into another value") {
  const WrittenTables tables;
  std::string other = confirmed;
  other.replace(other.find("steel-oiled\"\ngives"), 11, "timber-wet");
  tables.write("plant/form-faces.toml", other);
  CHECK(tables.faults() ==
        Texts{"plant/form-faces.toml:2:6: 'cen-tr-15728.q_adh_steel_oiled' is the id of another "
              "value (it gives 'adhesion' of 'steel-oiled')"});
}

TEST_CASE("a misspelt id is refused, it would leave two values for one") {
  const WrittenTables tables;
  std::string other = confirmed;
  other.replace(other.find("q_adh_steel_oiled"), 17, "q_adh_steel_oild");
  tables.write("plant/form-faces.toml", other);
  CHECK(tables.faults() ==
        Texts{"plant/form-faces.toml:4:9: 'adhesion' of 'steel-oiled' is given by "
              "'cen-tr-15728.q_adh_steel_oiled' and "
              "by 'cen-tr-15728.q_adh_steel_oild' (to replace a value in the plant's table, use its id: "
              "\"cen-tr-15728.q_adh_steel_oiled\")"});
}

TEST_CASE("a plant adds a finish and the document it comes from") {
  const WrittenTables tables;
  tables.write("plant/sources.toml",
               "[[source]]\nkey = \"pull-tests\"\ntitle = \"Pull tests at form 7\"\nkind = \"report\"\n");
  tables.write(
      "plant/form-faces.toml",
      "[[entry]]\nid = \"pull-tests.q_rubber\"\nof = \"rubber-liner\"\ngives = \"adhesion\"\nsymbol = \"q\"\n"
      "what = \"adhesion of a rubber liner\"\nvalue = 40\nunit = \"psf\"\nbasis = \"published\"\n"
      "source = \"pull-tests\"\nlocator = \"page 2\"\n");
  const Tables read = tables.good();
  CHECK(in(psf, read.form_faces.at("rubber-liner").adhesion.value) == Approx(40.0));
  CHECK(read.form_faces.at("rubber-liner").adhesion.source.title == "Pull tests at form 7");
  CHECK(read.overridden.empty());
}

TEST_CASE("a plant's file of another name is refused") {
  const WrittenTables tables;
  tables.write("plant/forms.toml", confirmed);
  const Texts found = tables.faults();
  REQUIRE(found.size() == 1);
  CHECK(found[0].starts_with("plant/forms.toml: no table has this name"));
}

TEST_CASE("a plant changes a value of a shipped rule set, and nothing else of it") {
  const WrittenTables tables;
  const std::string entry =
      "[[entry]]\nid = \"29-cfr-1926-704.insert_factor\"\ngives = \"insert_factor\"\nsymbol = \"n_i\"\n"
      "what = \"factor on inserts\"\nvalue = 5\nunit = \"1\"\nbasis = \"choice\"\nnote = \"rule of the "
      "plant\"\n";
  tables.write("plant/rules/us.toml", entry + "source = \"29-cfr-1926-704\"\n");
  const Tables read = tables.good();
  CHECK(read.rule_sets.at("us").insert_factor.value.value() == 5.0);
  CHECK(read.rule_sets.at("us").insert_factor.source.basis == Basis::choice);
  CHECK(read.rule_sets.at("us").cautions.size() > 1);
  CHECK(read.overridden == Texts{"29-cfr-1926-704.insert_factor"});

  tables.write("plant/rules/us.toml",
               "[rule_set]\nid = \"us\"\n[[mandatory]]\nrule = \"sling-angle\"\n" + entry);
  const std::string refused =
      "a plant's change of rules/us.toml may hold entries only (for other cautions or mandatory rules write "
      "a rule set "
      "of your own, in a new file)";
  CHECK(tables.faults() ==
        Texts{"plant/rules/us.toml:1:2: " + refused, "plant/rules/us.toml:3:3: " + refused});
}

TEST_CASE("a new file is a rule set of the plant's own, ids and all") {
  const WrittenTables tables;
  const std::size_t shipped = tables.good().rule_sets.size();
  tables.write("plant/rules/north-yard.toml", own_rule_set(tables, "north-yard"));
  const Tables read = tables.good();
  CHECK(read.rule_sets.size() == shipped + 1);
  CHECK(read.rule_sets.at("north-yard").insert_factor.value.value() == 4.0);
  CHECK(read.rule_sets.at("north-yard").insert_factor.source.table == "rules/north-yard.toml of the plant");
  CHECK(read.rule_sets.at("us").insert_factor.source.table == "rules/us.toml");
  CHECK(read.overridden.empty());

  tables.write("plant/rules/south-yard.toml", own_rule_set(tables, "us"));
  CHECK(tables.faults().front().ends_with(
      ": the rule set 'us' stands in rules/south-yard.toml (the id is the name of the file without .toml)"));
}

TEST_CASE("a plant's directory that is not there is a fault, not silence") {
  const auto result = read_tables("tables", "no/such/plant");
  REQUIRE(std::holds_alternative<std::vector<Diagnostic>>(result));
  CHECK(show(std::get<std::vector<Diagnostic>>(result).front()) ==
        "no/such/plant: error: there is no such directory of tables\n");
}
