// Which files are read, and what is refused about the files as such and about each kind of row.

#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "tables/toml_file.hpp"
#include "unit/tables/written_tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

using Texts = std::vector<std::string>;

TEST_CASE("a directory that is not there is one fault") {
  const auto result = read_tables("no/such/directory");
  REQUIRE(std::holds_alternative<std::vector<Diagnostic>>(result));
  const auto& faults = std::get<std::vector<Diagnostic>>(result);
  REQUIRE(faults.size() == 1);
  CHECK(show(faults[0]) == "no/such/directory: error: there is no such directory of tables\n");
}

TEST_CASE("a file that is missing or cannot be read is a fault") {
  const WrittenTables tables;
  tables.remove("hoists.toml");
  CHECK(tables.faults() == Texts{"hoists.toml: there is no such file"});
  tables.write("hoists.toml/x", "");  // a folder in place of the file
  CHECK(tables.faults() == Texts{"hoists.toml: there is no such file"});
}

TEST_CASE("without a rule set there is no start") {
  const WrittenTables tables;
  for (const auto& [id, rules] : tables.good().rule_sets) tables.remove("rules/" + id + ".toml");
  CHECK(tables.faults() == Texts{"rules: there is no rule set"});
}

TEST_CASE("a file of another name is refused: its values would go unread in silence") {
  const WrittenTables tables;
  tables.write("form-face.toml", "");
  CHECK(tables.faults() ==
        Texts{"form-face.toml: no table has this name (did you mean 'form-faces.toml'?; rule sets "
              "are rules/*.toml)"});
}

TEST_CASE("what is not TOML, and what is hidden, is left alone") {
  const WrittenTables tables;
  tables.write("README.md", "notes");
  tables.write(".backup/steels.toml", "not even TOML");
  tables.write(".steels.toml", "not even TOML");
  CHECK(tables.good().steels.size() > 1);
}

TEST_CASE("a broken file is told where it breaks, and does not blame the others") {
  const WrittenTables tables;
  tables.write("sources.toml", "[[source]]\nkey = \n");
  const Texts found = tables.faults();
  REQUIRE(found.size() == 1);
  CHECK(found[0].starts_with("sources.toml:2:"));
}

TEST_CASE("a file larger than any table is refused") {
  const WrittenTables tables;
  tables.write("slings.toml", "#" + std::string(largest_toml_file, ' '));
  CHECK(tables.faults() == Texts{"slings.toml: the file has more than 1048576 bytes"});
}

TEST_CASE("sources are named once, each with its kind") {
  const WrittenTables tables;
  const std::string good = tables.text_of("sources.toml");
  tables.write("sources.toml",
               good + "\n[[source]]\nkey = \"asme-b30-9\"\ntitle = \"again\"\nkind = \"standard\"\n");
  CHECK(tables.faults() ==
        Texts{tables.place("sources.toml", "\"asme-b30-9\"\ntitle = \"again\"") +
              ": there is already a source 'asme-b30-9' (give the document a key of its own)"});
  tables.write("sources.toml", good + "\n[[source]]\nkey = \"k\"\nkind = \"standart\"\nyear = 2020\n");
  CHECK(tables.faults() ==
        Texts{tables.place("sources.toml", "[[source]]\nkey = \"k\"") + ": [[source]] has no 'title'",
              tables.place("sources.toml", "\"standart\"") +
                  ": 'kind' cannot be 'standart' (did you mean 'standard'?)",
              tables.place("sources.toml", "year") +
                  ": [[source]] has no key 'year' (there are: 'key', 'title', 'edition', 'kind')"});
}

TEST_CASE("a row with a value missing is refused") {
  const WrittenTables tables;
  tables.replace("steels.toml", "of = \"A108-stud\"\ngives = \"fya\"",
                 "of = \"A108-studs\"\ngives = \"fya\"");
  CHECK(tables.faults() == Texts{"steels.toml: no entry gives 'fya' of 'A108-stud'",
                                 "steels.toml: no entry gives 'futa' of 'A108-studs'"});
}

TEST_CASE("values of a row that contradict each other are refused") {
  const WrittenTables tables;
  const auto after = [&](const std::string& name, const std::string& id, const std::string& value) {
    const std::string text = tables.text_of(name);
    const std::size_t at = text.find("value", text.find("\"" + id + "\""));
    REQUIRE(at != std::string::npos);
    const std::size_t end = text.find('\n', at);
    tables.write(name, text.substr(0, at) + "value = " + value + text.substr(end));
  };
  after("steels.toml", "astm-f1554.fya_36", "59");
  after("concretes.toml", "aci-318-19.density_low_normalweight", "160");
  after("slings.toml", "asme-b30-9.design_factor_chain", "0.25");
  after("hoists.toml", "en-1991-3.phi_2_min_hc1", "0.99");
  after("specimens.toml", "en-1992-1-1.cube_150_mm", "1.25");
  CHECK(
      tables.faults() ==
      Texts{tables.place("steels.toml", "59") + ": the yield strength is above the tensile strength",
            tables.place("concretes.toml", "160") + ": 'density_low' is not below 'density_high'",
            tables.place("slings.toml", "0.25") + ": 'design_factor' of 'chain' must be at least 1, not 0.25",
            tables.place("hoists.toml", "0.99") + ": 'phi_min' of 'HC1' must be at least 1, not 0.99",
            tables.place("specimens.toml", "1.25") +
                ": 'to_cylinder' of 'cube 150 mm' must be more than 0 and at most 1, not 1.25"});
}

TEST_CASE("a specimen is named by its shape and size") {
  const WrittenTables tables;
  tables.replace("specimens.toml", "of = \"cube 100 mm\"", "of = \"cube 100\"");
  const Texts found = tables.faults();
  REQUIRE(found.size() == 1);
  CHECK(
      found[0].ends_with(": 'of' is not a specimen: no size (write \"cylinder 4x8 in\" or \"cube 150 mm\")"));
}

TEST_CASE("every byte read is in the content, with the name of its file") {
  const WrittenTables tables;
  const Tables before = tables.good();
  CHECK(before.content.find("hoists.toml " + std::to_string(tables.text_of("hoists.toml").size()) + "\n" +
                            tables.text_of("hoists.toml")) != std::string::npos);
  tables.write("hoists.toml", tables.text_of("hoists.toml") + "# a note\n");
  CHECK(tables.good().content != before.content);
}
