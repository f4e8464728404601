// One value of a key: limits at, below and above; types; text of strangers.

#include "plan/values.hpp"

#include <catch2/catch.hpp>

#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

using List = std::vector<std::string>;

// The faults of a plan in which one section has this line more, without their places.
List faults_with(std::string_view after, const std::string& line) {
  List faults = faults_of(with(whole_plan(), after, std::string(after) + "\n" + line));
  for (std::string& fault : faults) fault.erase(0, fault.find(' ') + 1);
  return faults;
}
List faults_in_sling(const std::string& line) { return faults_with("kind = \"chain\"", line); }
List faults_in_contact(const std::string& line) { return faults_with("finish = \"smooth\"", line); }
List faults_in_crane(const std::string& line) { return faults_with("rated = \"10 t\"", line); }
List faults_in_piece(const std::string& line) { return faults_with("engineer = \"somebody\"", line); }

}  // namespace

TEST_CASE("more than zero: at, below and above") {
  CHECK(faults_in_sling("rated = \"0 kN\"") == List{"'rated' must be more than zero"});
  CHECK(faults_in_sling("rated = \"-1e-9 kN\"") == List{"'rated' must be more than zero"});
  CHECK(faults_in_sling("rated = \"1e-9 kN\"").empty());
}

TEST_CASE("not negative: at, below and above") {
  CHECK(faults_in_crane("block = \"0 lb\"").empty());
  CHECK(faults_in_crane("block = \"-1e-9 lb\"") == List{"'block' must not be negative"});
  CHECK(faults_in_crane("block = \"1e-9 lb\"").empty());
}

TEST_CASE("a factor of safety, 1 to 12: at both ends, below and above, not a number and infinite") {
  const List outside{"'design_factor' must be from 1 to 12, as a factor of safety is"};
  CHECK(faults_in_sling("design_factor = 1").empty());
  CHECK(faults_in_sling("design_factor = 12").empty());
  CHECK(faults_in_sling("design_factor = 0.9999999999999999") == outside);
  CHECK(faults_in_sling("design_factor = 12.000000000000002") == outside);
  CHECK(faults_in_sling("design_factor = 1.0000000000000002").empty());
  CHECK(faults_in_sling("design_factor = nan") == List{"'design_factor' must be finite"});
  CHECK(faults_in_sling("design_factor = inf") == List{"'design_factor' must be finite"});
  CHECK(faults_in_sling("design_factor = -inf") == List{"'design_factor' must be finite"});
  CHECK(faults_in_sling("design_factor = \"5\"").empty());
  CHECK(faults_in_sling("design_factor = 9223372036854775807") == outside);
}

TEST_CASE("0 to 90 deg: at both ends, below and above") {
  CHECK(faults_in_contact("draft = \"0 deg\"").empty());
  CHECK(faults_in_contact("draft = \"90 deg\"").empty());
  CHECK(faults_in_contact("draft = \"-1e-9 deg\"") == List{"'draft' must be from 0 to 90 deg"});
  CHECK(faults_in_contact("draft = \"90.0000000001 deg\"") == List{"'draft' must be from 0 to 90 deg"});
}

TEST_CASE("less than 100 %: at both ends, below and above") {
  const auto faults = [](const std::string& tolerance) {
    List all =
        faults_of(with(whole_plan(), "density_tolerance = \"3 %\"", "density_tolerance = " + tolerance));
    for (std::string& fault : all) fault.erase(0, fault.find(' ') + 1);
    return all;
  };
  CHECK(faults("\"0 %\"").empty());
  CHECK(faults("\"99.9999999 %\"").empty());
  CHECK(faults("\"100 %\"") == List{"'density_tolerance' must be from 0 % to less than 100 %"});
  CHECK(faults("\"-1e-9 %\"") == List{"'density_tolerance' must be from 0 % to less than 100 %"});
  CHECK(faults("\"3\"") == List{"'density_tolerance' must be from 0 % to less than 100 %"});
  CHECK(faults("\"0.03\"").empty());
  CHECK(faults("0.03") == List{"'density_tolerance' needs a share with its %; given: a bare number | for "
                               "example: density_tolerance = \"3 %\""});
}

TEST_CASE("a fault inside a quantity is shown at its byte") {
  const std::string text = with(whole_plan(), "\"2400 kg/m3\"", "\"2400 kq/m3\"");
  const auto faults = faults_of(text);
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].starts_with(place_of(text, "kq/m3") + " 'density': "));
}

TEST_CASE("behind letters of more than one byte the column still counts bytes") {
  const std::string text =
      with(whole_plan(), "rating = { load = \"2 t\" }", "certificate = \"Los Käse\", steel = 3");
  CHECK(faults_of(text).size() == 1);  // not TOML: kept to show that the letter itself is no fault
  const std::string inline_table = with(whole_plan(), "{ to = \"A1\", length = \"1 m\", gear = \"chain\" }",
                                        "{ gear = \"Kräne\", to = \"A1\", length = \"1 q\" }");
  const auto faults = faults_of(inline_table);
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].starts_with(place_of(inline_table, "\"Kräne\"") + " there is no sling 'Kräne'"));
  CHECK(faults[1].starts_with(place_of(inline_table, "q\" }") + " 'length': "));
}

TEST_CASE("every wrong type is named, with what is needed") {
  CHECK(faults_in_sling("rated = 5") == List{"'rated' needs a force or weight with its unit; given: a bare "
                                             "number | for example: rated = \"11250 lb\""});
  CHECK(faults_in_sling("rated = [\"5 kN\"]")
            .at(0)
            .starts_with("'rated' needs a force or weight with its unit; given: a list"));
  CHECK(faults_in_sling("rated = {}")
            .at(0)
            .starts_with("'rated' needs a force or weight with its unit; given: a table"));
  CHECK(faults_in_sling("rated = true").at(0).find("given: true or false") != std::string::npos);
  CHECK(faults_in_sling("rated = 2026-03-02").at(0).find("given: a date without a time") !=
        std::string::npos);
  CHECK(faults_in_sling("design_factor = \"5 kN\"").at(0).starts_with("'design_factor': "));
  CHECK(faults_with("cast = 2026-03-02T16:30:00", "cure = true")
            .at(0)
            .starts_with("'cure' needs a word in quotes; given: true or false"));
}

TEST_CASE("text that cannot be seen, or orders what is seen, is refused at its place") {
  CHECK(faults_in_piece("revision = \"a\\u202Eb\"") ==
        List{"'revision' has the character U+202E, which cannot be seen | write one line of visible text"});
  CHECK(faults_in_piece("revision = \"a\\u2066b\"").size() == 1);
  CHECK(faults_in_piece("revision = \"a\\u0007b\"").size() == 1);
  CHECK(faults_in_piece("revision = \"a\\nb\"").size() == 1);
  CHECK(faults_in_piece("revision = \"a\\tb\"").size() == 1);
  CHECK(faults_in_piece("revision = \"\"\"a\nb\"\"\"").size() == 1);
  CHECK(faults_in_piece("revision = \"Straße 5, ½ in\"").empty());
  CHECK(faults_in_piece("units = \"u\\u202Es\"").size() == 1);
  CHECK(faults_in_piece("stated_weight = \"5\\u0000kN\"").size() == 1);
}

TEST_CASE("a text of 200 characters is printed, one of 201 is refused") {
  const auto letters = [](int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text += "ä";  // two bytes each
    return "revision = \"" + text + "\"";
  };
  CHECK(faults_in_piece(letters(200)).empty());
  CHECK(faults_in_piece(letters(201)) == List{"'revision' has more than 200 characters"});
}

TEST_CASE("a long or hostile name is cut and made printable in messages") {
  CHECK(in_quotes("A1") == "'A1'");
  CHECK(in_quotes("a\x1b[31mb") == "'a\\x1B[31mb'");
  CHECK(in_quotes(std::string(60, 'a')) == "'" + std::string(60, 'a') + "'");
  CHECK(in_quotes(std::string(61, 'a')) == "'" + std::string(60, 'a') + "...'");
  const auto faults = faults_in_piece("\"" + std::string(5000, 'x') + "\" = 1");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].starts_with("[piece] has no key '" + std::string(60, 'x') + "...'"));
}

TEST_CASE("a name is not empty and has no space around it") {
  const auto fault = [](const std::string& mark) {
    return faults_of(with(whole_plan(), "mark = \"B-1\"", "mark = \"" + mark + "\""));
  };
  CHECK(fault("") == List{"5:8 'mark' is empty | for example: mark = \"BC-0806-14\""});
  CHECK(fault(" B-1").at(0).starts_with("5:8 'mark' begins or ends with a space"));
  CHECK(fault("B-1 ").at(0).starts_with("5:8 'mark' begins or ends with a space"));
  CHECK(fault("B 1").empty());
}

TEST_CASE("a key of another section is sent there, a near one is suggested") {
  CHECK(faults_in_piece("density = \"1 kg/m3\"") ==
        List{"[piece] has no key 'density' | it is a key of [concrete]"});
  CHECK(faults_in_piece("id = 3") ==
        List{"[piece] has no key 'id' | it is a key of [[insert]], [[sling]], [[hardware]], [[crane]], "
             "[[rigging]], [[rigging.hook]], [[rigging.beam]], [[rigging.beam.points]], [[rigging.sheave]], [[rigging.link]]"});
  CHECK(faults_in_piece("evidence = {}") ==
        List{"[piece] has no key 'evidence' | it is written [concrete.evidence]"});
  CHECK(faults_in_piece("unit = \"us\"") == List{"[piece] has no key 'unit' | did you mean 'units'?"});
}

TEST_CASE("a section in the wrong number of brackets") {
  CHECK(faults_of(with(whole_plan(), "[[sling]]", "[sling]")).at(0) ==
        "46:1 [[sling]] is a list; given: a table | write [[sling]] above each");
  CHECK(faults_of(with(whole_plan(), "[concrete]", "[[concrete]]")).at(0) ==
        "15:1 [concrete] is one table; given: a list of tables | write [concrete] once");
}

TEST_CASE("a specimen is found by its shape and size") {
  const auto read = [](const std::string& specimen) {
    return plan_of(with(whole_plan(), "\"cube 150 mm\"", "\"" + specimen + "\""))
        .concrete.evidence.value()
        .specimen.value();
  };
  CHECK(read("cylinder 4x8 in").shape == SpecimenShape::cylinder);
  CHECK(in(inch, read("cylinder 4 x 8 in").height) == Approx(8.0));
  CHECK(in(inch, read("cylinder 101.6x203.2 mm").width) == Approx(4.0));
  CHECK(read("cube 15 cm").shape == SpecimenShape::cube);
  const auto faults = faults_of(with(whole_plan(), "\"cube 150 mm\"", "\"cube 151 mm\""));
  CHECK(faults == List{"21:12 'specimen' cannot be 'cube 151 mm' | did you mean 'cube 150 mm'?"});
  CHECK(faults_of(with(whole_plan(), "\"cube 150 mm\"", "\"ball 150 mm\""))
            .at(0)
            .starts_with("21:13 'specimen': "));
}
