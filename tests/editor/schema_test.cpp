// The JSON Schemas: as committed, valid for every good file, invalid for broken ones, true to the list of
// keys.

#include <catch2/catch.hpp>

#include <filesystem>
#include <set>

#include "editor/quantity_pattern.hpp"
#include "editor/schema.hpp"
#include "support/plan_files.hpp"
#include "support/schema_validator.hpp"
#include "support/toml_json.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using Json = nlohmann::json;

namespace {

const Json& schema_for(const std::string& kind) {
  static std::map<std::string, Json> all;
  const auto [found, is_new] = all.try_emplace(kind);
  if (is_new) found->second = Json::parse(editor::schema_of(kind, real_tables()));
  return found->second;
}

std::vector<std::string> faults_in(const std::string& kind, const std::string& text) {
  const auto parsed = tables::parse_toml("", text);
  REQUIRE(std::holds_alternative<toml::table>(parsed));
  return schema_faults(schema_for(kind), json_of(std::get<toml::table>(parsed)));
}

std::string joined(const std::vector<std::string>& faults) {
  std::string all;
  for (const std::string& each : faults) all += each + "\n";
  return all;
}

// Every property with its examples, at any depth.
void check_examples(const Json& schema, const std::string& at, std::size_t& count) {
  if (schema.contains("examples"))
    for (const Json& example : schema["examples"]) {
      CAPTURE(at, example.dump());
      CHECK(joined(schema_faults(schema, example)) == "");
      ++count;
    }
  if (schema.contains("properties"))
    for (const auto& [name, inner] : schema["properties"].items())
      check_examples(inner, at + "/" + name, count);
  if (schema.contains("items")) check_examples(schema["items"], at + "/0", count);
}

}  // namespace

TEST_CASE("the committed schemas are those of the list of keys: sh tests/golden/update.sh writes them anew") {
  for (const char* kind : {"plan", "strength", "shift"}) {
    CAPTURE(kind);
    CHECK(contents_of("docs/schema/" + std::string(kind) + ".schema.json") ==
          editor::schema_of(kind, real_tables()));
  }
}

TEST_CASE("every good file of the repository is valid by its schema") {
  const std::vector<std::string> plans = all_plans();
  CHECK(plans.size() > 50);
  for (const std::string& file : plans) {
    CAPTURE(file);
    CHECK(joined(faults_in("plan", contents_of(file))) == "");
  }
  CHECK(joined(faults_in("shift", contents_of("docs/demo/shift.toml"))) == "");
  std::size_t pours = 0;
  for (const auto& entry : std::filesystem::directory_iterator("docs/demo/strength")) {
    if (entry.path().extension() != ".toml") continue;
    CAPTURE(entry.path().string());
    CHECK(joined(faults_in("strength", contents_of(entry.path().string()))) == "");
    ++pours;
  }
  CHECK(pours > 1);
}

// What it takes more than one value, or geometry, or the names of a plan to see is the reader's alone.
TEST_CASE("broken plans are invalid by the schema") {
  for (const char* name : {"concrete-unknown",
                           "date-without-time",
                           "density-not-positive",
                           "dynamic-factor-below-one",
                           "format-missing",
                           "format-of-the-future",
                           "ground-unknown",
                           "hardware-kind-unknown",
                           "height-for-length",
                           "insert-id-empty",
                           "insert-made-for-unknown",
                           "key-of-another-section",
                           "key-of-another-shape",
                           "key-unknown",
                           "landing-restraint-as-yes-or-no",
                           "legs-missing",
                           "list-too-short",
                           "mark-empty",
                           "mesh-path-absolute",
                           "name-with-space-behind",
                           "number-for-a-name",
                           "number-in-quotes-without-unit",
                           "number-without-unit",
                           "one-for-a-list",
                           "outline-of-two-points",
                           "rating-factor-below-one",
                           "rating-without-load",
                           "result-not-positive",
                           "results-empty",
                           "rules-unknown",
                           "section-in-one-bracket",
                           "section-unknown",
                           "shape-missing",
                           "shape-unknown",
                           "share-as-bare-number",
                           "size-negative",
                           "solids-missing",
                           "stages-missing",
                           "stage-without-rigging",
                           "text-for-yes-or-no",
                           "title-too-long",
                           "turn-method-unknown",
                           "turn-without-an-end",
                           "turned-without-angle",
                           "unit-of-another-dimension",
                           "unit-unknown",
                           "words-of-lists-unknown",
                           "words-of-tables-unknown"}) {
    CAPTURE(name);
    CHECK_FALSE(faults_in("plan", contents_of("tests/plans/bad/" + std::string(name) + ".toml")).empty());
  }
}

TEST_CASE("a schema holds every key of its list, and each example of it is valid") {
  for (const char* kind : {"plan", "strength", "shift"}) {
    std::size_t keys = 0, examples = 0;
    for (const plan::Section& section : *editor::sections_of(kind)) keys += section.keys.size();
    check_examples(schema_for(kind), kind, examples);
    CAPTURE(kind);
    CHECK(examples == keys);
  }
  CHECK(editor::sections_of("manual") == nullptr);
}

TEST_CASE("the pattern of a quantity takes what the reader takes, and not what it refuses") {
  using plan::Kind;
  using plan::Limit;
  const auto valid = [](Kind kind, const std::string& text, Limit limit = Limit::more_than_zero) {
    const Json schema = {{"type", "string"}, {"pattern", editor::quantity_pattern(kind, limit)}};
    return schema_faults(schema, text).empty();
  };
  for (const char* text : {"8 ft 4 in", "8'-4\"", "8' 4 1/2\"", "5/8 in", "1 1/2 in", "1-1/2 in", "2.1 m",
                           "2.1m", ".75 in", "1e3 mm", "100 in.", "6 feet 2 inches", " 3 m "}) {
    CAPTURE(text);
    CHECK(valid(Kind::length, text));
  }
  for (const char* text : {"", "2.1", "two m", "3 kN", "2,1 m", "-2 m", "8 ft 4", "m", "3 mmm"}) {
    CAPTURE(text);
    CHECK_FALSE(valid(Kind::length, text));
  }
  CHECK(valid(Kind::length, "-2 m", Limit::none));
  for (const char* text : {"19.2 kip", "350 lb", "4 short ton", "85 kN", "1.3 t"}) {
    CAPTURE(text);
    CHECK(valid(Kind::force, text));
  }
  for (const char* text : {"4 ton", "3 m", "4"}) {
    CAPTURE(text);
    CHECK_FALSE(valid(Kind::force, text));
  }
  for (const char* text : {"17.5 MPa", "2500 psi", "12 N/mm2", "250 kgf/cm2", "20 psf"}) {
    CAPTURE(text);
    CHECK(valid(Kind::stress, text));
  }
  CHECK_FALSE(valid(Kind::stress, "20 kN"));
  for (const char* text : {"2400 kg/m3", "150 lb/ft3", "150 pcf", "24 kN/m3"}) {
    CAPTURE(text);
    CHECK(valid(Kind::density, text));
  }
  for (const char* text : {"0.91 in2", "900 mm2", "3 ft^2"}) {
    CAPTURE(text);
    CHECK(valid(Kind::area, text));
  }
  CHECK_FALSE(valid(Kind::area, "900 mm"));
  for (const char* text : {"14 h", "14 h 30 min", "2 d 3 h"}) {
    CAPTURE(text);
    CHECK(valid(Kind::duration, text));
  }
  for (const char* text : {"24 ft/min", "6 m/min", "24 fpm"}) {
    CAPTURE(text);
    CHECK(valid(Kind::speed, text));
  }
  for (const char* text : {"3 %", "3%", "0.03"}) {
    CAPTURE(text);
    CHECK(valid(Kind::share, text));
  }
  CHECK(valid(Kind::temperature, "-5 degC", Limit::none));
  CHECK_FALSE(valid(Kind::temperature, "-5 C", Limit::none));
}
