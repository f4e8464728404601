// A rule set with anything missing, misspelt or contradictory is refused.

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include "unit/tables/written_tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

using Texts = std::vector<std::string>;
const std::string us = "rules/us.toml";

// The [[entry]] with this id, from its heading to the blank line or the end.
std::string entry_of(const WrittenTables& tables, const std::string& id) {
  const std::string text = tables.text_of(us);
  const std::size_t at = text.find("id = \"" + id + "\"");
  CAPTURE(id);
  REQUIRE(at != std::string::npos);
  const std::size_t begin = text.rfind("[[entry]]", at);
  const std::size_t end = std::min(text.find("\n\n", at), text.size());
  return text.substr(begin, end - begin);
}

// `field` of the entry with this id written as `value`.
void set_field(const WrittenTables& tables, const std::string& id, const std::string& field,
               const std::string& value) {
  const std::string entry = entry_of(tables, id);
  const std::size_t at = entry.find("\n" + field + " = ");
  REQUIRE(at != std::string::npos);
  const std::size_t from = at + field.size() + 4;
  const std::string changed = entry.substr(0, from) + value + entry.substr(entry.find('\n', from));
  tables.replace(us, entry, changed);
}

// Where the value of that field stands in the entry with this id.
std::string place_of_value(const WrittenTables& tables, const std::string& id, const std::string& field) {
  const std::string text = tables.text_of(us);
  const std::size_t at = text.find(field + " = ", text.find("id = \"" + id + "\""));
  const auto line = std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n') + 1;
  return us + ":" + std::to_string(line) + ":" + std::to_string(field.size() + 4);
}

}  // namespace

TEST_CASE("a rule set with any value missing is refused") {
  const WrittenTables tables;
  const std::string whole = tables.text_of(us);
  std::size_t tried = 0;
  for (const Source& source : tables.good().entries) {
    if (source.table != us) continue;
    const std::string entry = entry_of(tables, source.id);
    if (entry.find("gives = \"bending_multiplier\"") != std::string::npos) continue;  // a free list
    CAPTURE(source.id);
    tables.replace(us, entry, "");
    const Texts found = tables.faults();
    REQUIRE(found.size() == 1);
    CHECK(found[0].starts_with(us + ": no entry gives '"));
    tables.write(us, whole);
    ++tried;
  }
  CHECK(tried > 50);
}

TEST_CASE("the message names what is missing") {
  const WrittenTables tables;
  tables.replace(us, entry_of(tables, "aci-318-19.k_c"), "");
  tables.replace(us, entry_of(tables, "pci-handbook-7.phi_haul"), "");
  CHECK(tables.faults() ==
        Texts{us + ": no entry gives 'dynamic_factor' of 'haul'", us + ": no entry gives 'headed.k_c'"});
}

TEST_CASE("a value under another name is refused and leaves its own missing") {
  const WrittenTables tables;
  set_field(tables, "aci-318-19.k_c", "gives", "\"headed.kc\"");
  CHECK(tables.faults() ==
        Texts{us + ": no entry gives 'headed.k_c'",
              place_of_value(tables, "aci-318-19.k_c", "gives") +
                  ": nothing reads a value 'headed.kc' here (did you mean 'headed.k_c'?)"});
}

TEST_CASE("a value of a stage that does not exist, or of none, is refused") {
  const WrittenTables tables;
  set_field(tables, "pci-handbook-7.phi_strip", "of", "\"stripp\"");
  CHECK(tables.faults() == Texts{us + ": no entry gives 'dynamic_factor' of 'strip'",
                                 place_of_value(tables, "pci-handbook-7.phi_strip", "of") +
                                     ": nothing reads 'dynamic_factor' of 'stripp' (did you mean 'strip'?)"});
  set_field(tables, "pci-handbook-7.phi_strip", "of", "\"strip\"");
  set_field(tables, "us.sharing", "gives", "\"sharing\"\nof = \"strip\"");
  CHECK(tables.faults() == Texts{us + ": no entry gives 'sharing'",
                                 place_of_value(tables, "us.sharing", "of") +
                                     ": nothing reads 'sharing' of 'strip' (leave 'of' out)"});
  set_field(tables, "us.sharing", "of", "\"\"");
  CHECK(tables.faults() == Texts{place_of_value(tables, "us.sharing", "of") +
                                 ": 'of' is empty (fill it in, or leave the field out)"});
}

TEST_CASE("a bending multiplier begins with a stage") {
  const WrittenTables tables;
  set_field(tables, "pci-handbook-7.m_haul", "of", "\"hauling.any.any\"");
  CHECK(tables.faults() ==
        Texts{place_of_value(tables, "pci-handbook-7.m_haul", "value") +
              ": 'hauling.any.any' does not begin with a stage (there are: 'strip', 'turn', 'yard', "
              "'store', 'haul', 'set')"});
}

TEST_CASE("each model is one of its words") {
  struct Row {
    std::string id, name, word, help;
  };
  for (const Row& row :
       {Row{"us.insert_load", "insert_load", "weight",
            "there are: 'with adhesion and dynamic factor', 'weight only'"},
        Row{"us.crane_load", "crane_load", "with adhesio", "did you mean 'with adhesion'?"},
        Row{"us.sharing", "sharing", "equal", "there are: 'statics', 'elastic'"},
        Row{"us.usable_strength", "usable_strength", "least",
            "there are: 'lowest', 'mean', 'fractile, variation known', 'fractile, variation unknown', 'tolerance "
            "bound'"},
        Row{"us.maturity", "maturity", "refuse", "did you mean 'refused'?"},
        Row{"us.below_floor", "below_floor", "refused", "did you mean 'refuse'?"},
        Row{"us.rating_scaling", "rating_scaling", "linear", "there are: 'proportional', 'square root', 'as declared'"}}) {
    const WrittenTables tables;
    set_field(tables, row.id, "value", "\"" + row.word + "\"");
    CHECK(tables.faults() == Texts{place_of_value(tables, row.id, "value") + ": '" + row.name +
                                   "' cannot be '" + row.word + "' (" + row.help + ")"});
  }
  const WrittenTables tables;
  set_field(tables, "us.sharing", "value", "2\nunit = \"1\"");
  CHECK(tables.faults() == Texts{place_of_value(tables, "us.sharing", "value") +
                                 ": 'sharing' is a word (there are: 'statics', 'elastic')"});
}

TEST_CASE("a number outside what it can be is refused") {
  struct Row {
    std::string id, name, value, limit;
  };
  for (const Row& row :
       {Row{"29-cfr-1926-704.insert_factor", "insert_factor", "0.25", "at least 1"},
        Row{"29-cfr-1926-704.hardware_factor", "hardware_factor", "0", "at least 1"},
        Row{"us.minimum_results", "minimum_results", "1.5", "a whole number, at least 1"},
        Row{"us.minimum_results", "minimum_results", "0", "a whole number, at least 1"},
        Row{"29-cfr-1910-180.weight_disagreement", "weight_disagreement", "101", "more than 0 and at most 1"},
        Row{"asme-b30-9.minimum_sling_angle", "minimum_sling_angle", "90", "between 0 and 90 degrees"},
        Row{"asme-b30-9.minimum_sling_angle", "minimum_sling_angle", "-30", "between 0 and 90 degrees"},
        Row{"pci-handbook-7.minimum_strength", "minimum_strength", "0", "more than 0"},
        Row{"aci-318-19.psi_cp", "headed.psi_cp", "1.01", "more than 0 and at most 1"},
        Row{"aci-318-19.shear_bolt", "headed.shear_bolt", "6", "more than 0 and at most 1"}}) {
    const WrittenTables tables;
    set_field(tables, row.id, "value", row.value);
    CHECK(tables.faults() == Texts{place_of_value(tables, row.id, "value") + ": '" + row.name + "' must be " +
                                   row.limit + ", not " + row.value});
  }
}

TEST_CASE("a coefficient in the unit of another equation is refused") {
  struct Row {
    std::string id, unit, what;
  };
  for (const Row& row :
       {Row{"aci-318-19.k_c", "lbf/(psi^0.5 in^(5/3))",
            "'lbf/(psi^0.5 in^(5/3))' is not the unit of 'headed.k_c' (write a unit such as "
            "\"lbf/(psi^0.5 in^1.5)\")"},
        Row{"aci-318-19.k_deep", "lbf/(psi^0.5 in^1.5)",
            "'lbf/(psi^0.5 in^1.5)' is not the unit of 'headed.k_deep' (write a unit such as "
            "\"lbf/(psi^0.5 in^(5/3))\")"},
        Row{"aci-318-19.blowout", "psi",
            "'psi' is not the unit of 'headed.blowout' (write a unit such as \"psi^0.5\")"},
        Row{"aci-318-19.pullout", "psi",
            "'headed.pullout' is a ratio: 'psi' is not its unit (write \"1\" or \"%\")"}}) {
    const WrittenTables tables;
    set_field(tables, row.id, "unit", "\"" + row.unit + "\"");
    CHECK(tables.faults() == Texts{place_of_value(tables, row.id, "unit") + ": " + row.what});
  }
}

TEST_CASE("ranges of the formulas go upwards") {
  const WrittenTables tables;
  set_field(tables, "aci-318-19.deep_from", "value", "25");
  set_field(tables, "aci-318-19.f_c_least", "value", "10001");
  CHECK(tables.faults() == Texts{place_of_value(tables, "aci-318-19.deep_from", "value") +
                                     ": 'headed.deep_from' is not below 'headed.deep_to'",
                                 place_of_value(tables, "aci-318-19.f_c_least", "value") +
                                     ": 'headed.f_c_least' is not below 'headed.f_c_most'"});
}

TEST_CASE("the heading of a rule set is complete and fits its file") {
  const WrittenTables tables;
  const std::string good = tables.text_of(us);
  tables.replace(us, "id = \"us\"", "id = \"usa\"");
  CHECK(tables.faults() ==
        Texts{tables.place(us, "\"usa\"") + ": the rule set 'usa' stands in rules/us.toml (the id "
                                            "is the name of the file without .toml)"});
  tables.write(us, good);
  tables.replace(us, "[rule_set]", "[rules]");
  CHECK(tables.faults() ==
        Texts{us + ": the file has no [rule_set]",
              us + ":1:2: the file has no key 'rules' (there are: 'rule_set', 'mandatory', "
                   "'entry')"});
  tables.write(us, good);
  const std::size_t from = good.find("cautions = [");
  tables.write(us, good.substr(0, from) + "cautions = []" + good.substr(good.find("\n]\n", from) + 2));
  CHECK(tables.faults() ==
        Texts{tables.place(us, "[]") + ": 'cautions' is a list of texts: [\"...\", \"...\"]"});
}

TEST_CASE("mandatory rules have a known scope, known stages, and stand once") {
  const WrittenTables tables;
  const std::string good = tables.text_of(us);
  const std::string more =
      "\n[[mandatory]]\nrule = \"sling-angle\"\nscope = \"legs\"\nstages = [\"strip\", \"hall\"]\n";
  tables.write(us, good + more);
  CHECK(tables.faults() ==
        Texts{tables.place(us, "\"sling-angle\"\nscope = \"legs\"") + ": 'sling-angle' is listed twice",
              tables.place(us, "\"legs\"") + ": 'scope' cannot be 'legs' (did you mean 'leg'?)",
              tables.place(us, "[\"strip\", \"hall\"]") + ": 'hall' is not a stage (did you mean 'haul'?)"});

  std::string none = good;
  for (std::size_t at = none.find("[[mandatory]]"); at != std::string::npos; at = none.find("[[mandatory]]"))
    none.erase(at, none.find("\n\n", at) - at);
  tables.write(us, none);
  CHECK(tables.faults() == Texts{us + ": the rule set has no [[mandatory]] rule"});
}

TEST_CASE("a mandatory rule may be of some stages only") {
  const WrittenTables tables;
  tables.replace(us, "rule = \"insert-angle\"", "rule = \"insert-angle\"\nstages = [\"strip\", \"yard\"]");
  const Tables read = tables.good();
  const auto& mandatory = read.rule_sets.at("us").mandatory;
  const auto changed = std::find_if(mandatory.begin(), mandatory.end(),
                                    [](const auto& m) { return m.rule == "insert-angle"; });
  REQUIRE(changed != mandatory.end());
  CHECK(changed->stages == Texts{"strip", "yard"});
  CHECK(mandatory.front().stages.empty());
}
