// Each way in which a table entry can be wrong, with the message and the place that its author gets.

#include <catch2/catch.hpp>

#include <map>
#include <string>
#include <vector>

#include "unit/tables/written_tables.hpp"

using namespace firstpick::tables;

namespace {

using Texts = std::vector<std::string>;

const Texts good_lines = {
    "[[entry]]",                           // 1
    "id = \"cen-tr-15728.q\"",             // 2
    "of = \"steel-oiled\"",                // 3
    "gives = \"adhesion\"",                // 4
    "symbol = \"q\"",                      // 5
    "what = \"adhesion of oiled steel\"",  // 6
    "value = 1.0",                         // 7
    "unit = \"kN/m2\"",                    // 8
    "basis = \"from memory\"",             // 9
    "source = \"cen-tr-15728\"",           // 10
    "note = \"as remembered\"",            // 11
};

std::string lines_of(const Texts& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

// The good entry with some lines written otherwise (an empty text: left out, the line stays).
std::string entry_with(const std::map<std::size_t, std::string>& changed) {
  Texts lines = good_lines;
  for (const auto& [number, line] : changed) lines.at(number - 1) = line;
  return lines_of(lines);
}

Texts faults_of(const std::string& form_faces) {
  const WrittenTables tables;
  tables.write("form-faces.toml", form_faces);
  return tables.faults();
}

void check(const std::map<std::size_t, std::string>& changed, const Texts& expected) {
  CAPTURE(entry_with(changed));
  CHECK(faults_of(entry_with(changed)) == expected);
}

const std::string file = "form-faces.toml";

}  // namespace

TEST_CASE("the entry that the refusals start from is good") {
  const WrittenTables tables;
  tables.write("form-faces.toml", entry_with({}));
  const Tables read = tables.good();
  REQUIRE(read.form_faces.size() == 1);
  CHECK(firstpick::in(firstpick::kPa, read.form_faces.at("steel-oiled").adhesion.value) == Approx(1.0));
}

TEST_CASE("a missing field is refused at its entry") {
  check({{2, ""}}, {file + ":1:1: [[entry]] has no 'id'"});
  check({{3, ""}}, {file + ":1:1: [[entry]] has no 'of'"});
  check({{4, ""}},
        {file + ": no entry gives 'adhesion' of 'steel-oiled'", file + ":1:1: [[entry]] has no 'gives'"});
  check({{5, ""}}, {file + ":1:1: [[entry]] has no 'symbol'"});
  check({{6, ""}}, {file + ":1:1: [[entry]] has no 'what'"});
  check({{7, ""}}, {file + ":1:1: [[entry]] has no 'value'"});
  check({{8, ""}}, {file + ":1:1: [[entry]] has no 'unit'"});
  check({{9, ""}}, {file + ":1:1: [[entry]] has no 'basis'"});
  check({{10, ""}}, {file + ":1:1: [[entry]] has no 'source'"});
}

TEST_CASE("an unknown field is refused with the one that was meant") {
  check(
      {
          {11, "note = \"as remembered\"\nlocater = \"4.2\""},
      },
      {file + ":12:1: [[entry]] has no key 'locater' (did you mean 'locator'?)"});
  const Texts found = faults_of(entry_with({}) + "colour = \"red\"\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0].starts_with(file + ":12:1: [[entry]] has no key 'colour' (there are: 'id', 'symbol', "));
}

TEST_CASE("a field of the wrong type or an empty one is refused") {
  check({{5, "symbol = 3"}}, {file + ":5:10: 'symbol' is a text in quotes"});
  check({{6, "what = \" \""}}, {file + ":6:8: 'what' is empty (fill it in, or leave the field out)"});
  check({{7, "value = true"}}, {file + ":7:9: 'value' is a number or a word in quotes"});
  check({{7, "value = [1.0, 2.0]"}}, {file + ":7:9: 'value' is a number or a word in quotes"});
  check({{7, "value = \"heavy\""}},
        {file + ":7:9: 'adhesion' of 'steel-oiled' is a number", file + ":8:1: a word has no unit"});
}

TEST_CASE("incomplete provenance is refused") {
  check({{9, "basis = \"remembered\""}},
        {file + ":9:9: 'basis' cannot be 'remembered' (there are: 'published', 'quoted', 'common practice', "
                "'from memory', 'choice')"});
  check({{9, "basis = \"qouted\""}}, {file + ":9:9: 'basis' cannot be 'qouted' (did you mean 'quoted'?)"});
  for (const std::string basis : {"published", "quoted"})
    check({{9, "basis = \"" + basis + "\""}}, {file + ":9:9: a value that is " + basis +
                                               " needs a 'locator' (clause, table or page where it stands)"});
  for (const std::string basis : {"from memory", "common practice", "choice"})
    check({{9, "basis = \"" + basis + "\""}, {11, ""}},
          {file + ":9:9: a value with the basis '" + basis + "' needs a 'note' (say why it is this value)"});
  check({{9, "basis = \"published\""}, {10, ""}, {11, "locator = \"4.2\""}},
        {file + ":1:1: [[entry]] has no 'source'"});
  check({{9, "basis = \"common practice\""}, {10, ""}}, {file + ":1:1: [[entry]] has no 'source'"});
}

TEST_CASE("a source that is not in sources.toml is refused") {
  check({{10, "source = \"cen-tr-15782\""}},
        {file + ":10:10: sources.toml has no source 'cen-tr-15782' (did you mean 'cen-tr-15728'?)"});
}

TEST_CASE("an id is its source and a symbol") {
  check({{2, "id = \"q\""}},
        {file +
         ":2:6: 'q' is not an id (an id is \"<source>.<symbol>\" of letters, digits, '.', '_' and '-')"});
  check({{2, "id = \"cen-tr-15728.q adh\""}},
        {file + ":2:6: 'cen-tr-15728.q adh' is not an id (an id is "
                "\"<source>.<symbol>\" of letters, digits, '.', '_' and '-')"});
  check({{2, "id = \"en-1991-3.q\""}},
        {file + ":2:6: the id 'en-1991-3.q' does not begin with its source (write \"cen-tr-15728.q\")"});
}

TEST_CASE("a choice needs no source, and says that it is one") {
  const WrittenTables tables;
  tables.write("form-faces.toml", entry_with({{2, "id = \"ours.q\""}, {9, "basis = \"choice\""}, {10, ""}}));
  CHECK(tables.good().form_faces.at("steel-oiled").adhesion.source.title == "choice of this table");
}

TEST_CASE("an id twice is refused, in one file and in two") {
  check({{11, "note = \"as remembered\"\n" + entry_with({{3, "of = \"timber\""}})}},
        {file + ":13:6: the id 'cen-tr-15728.q' is used twice in this file"});
  const WrittenTables tables;
  tables.write("form-faces.toml", entry_with({{2, "id = \"cen-tr-15728.n\""}}));
  tables.write("slings.toml", entry_with({{2, "id = \"cen-tr-15728.n\""},
                                          {3, "of = \"chain\""},
                                          {4, "gives = \"design_factor\""},
                                          {7, "value = 4"},
                                          {8, "unit = \"1\""}}));
  CHECK(tables.faults() == Texts{"slings.toml:2:6: the id 'cen-tr-15728.n' is used in form-faces.toml too"});
}

TEST_CASE("a value given twice is refused with both ids") {
  const std::string second = entry_with({{2, "id = \"cen-tr-15728.r\""}});
  CHECK(faults_of(entry_with({}) + second) ==
        Texts{file +
              ":15:9: 'adhesion' of 'steel-oiled' is given by 'cen-tr-15728.q' and by 'cen-tr-15728.r' (to "
              "replace a value in the plant's table, use its id: \"cen-tr-15728.q\")"});
}

TEST_CASE("a value that nothing reads is refused") {
  check({{11, "note = \"n\"\n" + entry_with({{2, "id = \"cen-tr-15728.r\""}, {4, "gives = \"friction\""}})}},
        {file + ":15:9: nothing reads a value 'friction' here (the only one is 'adhesion')"});
}

TEST_CASE("a unit of another kind, or no unit, is refused") {
  const std::string units = "(write MPa, N/mm2, kPa, kN/m2, psi, ksi, psf)";
  check({{8, "unit = \"kN\""}},
        {file + ":8:8: 'adhesion' of 'steel-oiled' is a stress: 'kN' is not its unit " + units});
  check({{8, "unit = \"kn/m2\""}},
        {file + ":8:8: 'adhesion' of 'steel-oiled' is a stress: 'kn/m2' is not its unit " + units});
  check({{8, "unit = \"1\""}},
        {file + ":8:8: 'adhesion' of 'steel-oiled' is a stress: '1' is not its unit " + units});
}

TEST_CASE("a number that cannot be right is refused") {
  check({{7, "value = nan"}}, {file + ":7:9: 'value' is not a finite number"});
  check({{7, "value = inf"}}, {file + ":7:9: 'value' is not a finite number"});
  check({{7, "value = 0"}}, {file + ":7:9: 'adhesion' of 'steel-oiled' must be more than 0, not 0"});
  check({{7, "value = -1.5"}}, {file + ":7:9: 'adhesion' of 'steel-oiled' must be more than 0, not -1.5"});
}

TEST_CASE("only the plant confirms a value") {
  check({{11, "note = \"n\"\nconfirmed_by = \"P. E.\""}},
        {file + ":12:1: 'confirmed_by' belongs in a table of the plant (confirm a value in the plant's own "
                "directory)"});
}

TEST_CASE("a table that is no table, and a key at the top that nothing reads") {
  CHECK(faults_of("entry = 3\n") == Texts{file + ":1:9: 'entry' is written as tables, each below [[entry]]"});
  CHECK(faults_of("[entry]\nid = \"a.b\"\n") ==
        Texts{file + ":1:1: 'entry' is written as tables, each below [[entry]]"});
  CHECK(faults_of("entry = [1]\n") ==
        Texts{file + ":1:9: 'entry' is written as tables, each below [[entry]]"});
  CHECK(faults_of("titel = \"faces\"\n" + entry_with({})) ==
        Texts{file + ":1:1: the file has no key 'titel' (did you mean 'title'?)"});
}

TEST_CASE("all faults of all files come in one run, in the order of files and lines") {
  const WrittenTables tables;
  tables.write("form-faces.toml", entry_with({{5, "symbol = 3"}, {8, "unit = \"kN\""}}));
  tables.write("hoists.toml", "x = 1\n");
  tables.write("slings.toml", "[[entry]\n");
  const Texts found = tables.faults();
  REQUIRE(found.size() == 4);
  CHECK(found[0].starts_with("form-faces.toml:5:10: "));
  CHECK(found[1].starts_with("form-faces.toml:8:8: "));
  CHECK(found[2] == "hoists.toml:1:1: the file has no key 'x' (there are: 'title', 'entry')");
  CHECK(found[3].starts_with("slings.toml:"));
}
