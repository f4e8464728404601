// The list of keys against the reader: each key is looked at, each example can be read, each says what
// absence means.

#include "plan/keys.hpp"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "plan/values.hpp"
#include "plan/words.hpp"
#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

// A plan in which every section stands once, with `line` put into `section`; keys it has already are left
// out.
std::string plan_with(const Section& section, std::string_view key, std::string_view line) {
  std::string text;
  for (const Section& each : sections()) {
    const bool inline_table = each.path == "piece.solid.turned" || each.path == "insert.rating";
    if (!each.path.empty()) text += inline_table ? fmt::format("[{}]\n", each.path) : heading(each) + "\n";
    for (const Key& other : each.keys) {
      const bool wanted = &each == &section && other.name == key;
      if (wanted)
        text += std::string(line) + "\n";
      else if (other.required)
        text += fmt::format("{} = {}\n", other.name, other.example);
    }
  }
  return text;
}

// A value of a type that no key takes.
constexpr std::string_view no_value = "07:30:00";

// Examples name words of the shipped tables and things of another plan; those faults say nothing of the form.
bool is_about_words(const std::string& fault) {
  return fault.find("cannot be") != std::string::npos || fault.find("there is no") != std::string::npos;
}

}  // namespace

TEST_CASE("every key says in one line what it is, and what its absence means unless it is required") {
  for (const Section& each : sections()) {
    CAPTURE(each.path);
    CHECK_FALSE(each.doc.empty());
    CHECK((each.required || !each.absent.empty()));
    for (const Key& key : each.keys) {
      CAPTURE(key.name);
      CHECK_FALSE(key.doc.empty());
      CHECK(key.doc.find('\n') == std::string_view::npos);
      CHECK_FALSE(key.example.empty());
      CHECK(key.absent.empty() == key.required);
      CHECK((key.kind == Kind::word) == (key.words != Words::none));
      if (key.limit != Limit::none) CHECK((is_quantity(key.kind) || key.kind == Kind::number));
    }
  }
}

TEST_CASE("every key of a shift file says what it is, what its absence means, and has an example") {
  for (const Section& each : shift_file_sections()) {
    CHECK_FALSE(each.doc.empty());
    for (const Key& key : each.keys) {
      CAPTURE(each.path, key.name);
      CHECK_FALSE(key.doc.empty());
      CHECK_FALSE(key.example.empty());
      CHECK(key.absent.empty() == key.required);
    }
  }
}

TEST_CASE("no key stands twice in its section, nor next to a section of its name") {
  for (const Section& each : sections()) {
    std::set<std::string_view> names;
    for (const Key& key : each.keys) CHECK(names.insert(key.name).second);
    for (const Section* inner : sections_inside(each)) CHECK(names.insert(last_part(inner->path)).second);
  }
}

TEST_CASE("the reader looks at every key: a value of a wrong type is a fault at its place") {
  for (const Section& each : sections())
    for (const Key& key : each.keys) {
      const std::string line = fmt::format("{} = {}", key.name, no_value);
      const std::string text = plan_with(each, key.name, line);
      const std::size_t at = text.find(line);
      REQUIRE(at != std::string::npos);
      const auto number = std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n') + 1;
      const std::string place = fmt::format("{}:{} '{}'", number, key.name.size() + 4, key.name);
      const auto faults = faults_of(text);
      CAPTURE(each.path, key.name, place, faults);
      CHECK(std::ranges::any_of(faults, [&](const std::string& fault) { return fault.starts_with(place); }));
    }
}

TEST_CASE("every example of a key can be read") {
  for (const Section& each : sections())
    for (const Key& key : each.keys) {
      const std::string text = plan_with(each, key.name, fmt::format("{} = {}", key.name, key.example));
      const std::string about = fmt::format("'{}'", key.name);
      for (const std::string& fault : faults_of(text)) {
        CAPTURE(each.path, key.name, fault);
        const bool not_about_it = fault.find(about) == std::string::npos || is_about_words(fault);
        const bool of_shapes =
            fault.find("a box has no") != std::string::npos || fault.find("a box needs") != std::string::npos;
        const bool of_others =  // the key has a meaning only beside another
            fault.find("without 'wind_speed'") != std::string::npos || fault.find("without 'plane'") != std::string::npos ||
            fault.find("'across' without a plane") != std::string::npos || fault.find("the plane of 'mirror'") != std::string::npos;
        CHECK((not_about_it || of_shapes || of_others));
      }
      CHECK_FALSE(
          faults_of(text).empty());  // the examples belong to several plans: some name is always unknown
    }
}

TEST_CASE("fixed words are those of the enums, in their order") {
  CHECK(value_of<Shape>("box", shape_words) == Shape::box);
  CHECK(value_of<Shape>("cylinder", shape_words) == Shape::cylinder);
  CHECK(value_of<Shape>("cone", shape_words) == Shape::cone);
  CHECK(value_of<Shape>("pipe", shape_words) == Shape::pipe);
  CHECK(value_of<Shape>("prism", shape_words) == Shape::prism);
  CHECK(value_of<Shape>("wedge", shape_words) == Shape::wedge);
  CHECK(value_of<Shape>("mesh", shape_words) == Shape::mesh);
  CHECK(value_of<Axis>("x", axis_words) == Axis::x);
  CHECK(value_of<Axis>("y", axis_words) == Axis::y);
  CHECK(value_of<Axis>("z", axis_words) == Axis::z);
  CHECK(value_of<Cure>("field", cure_words) == Cure::field);
  CHECK(value_of<Cure>("match", cure_words) == Cure::match);
  CHECK(value_of<Cure>("standard", cure_words) == Cure::standard);
  CHECK(value_of<UnitSystem>("us", unit_system_words) == UnitSystem::us);
  CHECK(value_of<UnitSystem>("si", unit_system_words) == UnitSystem::si);
  for (const StageKind kind : {StageKind::strip, StageKind::turn, StageKind::yard, StageKind::store,
                               StageKind::haul, StageKind::set})
    CHECK(value_of<StageKind>(word_for(kind), stage_words) == kind);
  CHECK_FALSE(value_of<Axis>("w", axis_words).has_value());
}

TEST_CASE("a key of a shape is one of a known shape") {
  for (const Key& key : section("piece.solid").keys)
    for (const std::string_view shape : key.shapes) {
      CAPTURE(key.name, shape);
      CHECK(value_of<Shape>(shape, shape_words).has_value());
    }
}
