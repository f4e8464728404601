#include "strength/specimen.hpp"

#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::SpecimenShape;

namespace {

plan::Specimen cylinder(Length diameter, Length height) {
  return {SpecimenShape::cylinder, diameter, height};
}
plan::Specimen cube(Length side) { return {SpecimenShape::cube, side, side}; }

}  // namespace

TEST_CASE("a specimen is named in inches where they are whole, else in millimetres") {
  CHECK(strength::words_for(cylinder(4.0 * inch, 8.0 * inch)) == "cylinder 4x8 in");
  CHECK(strength::words_for(cylinder(150.0 * mm, 300.0 * mm)) == "cylinder 150x300 mm");
  CHECK(strength::words_for(cube(150.0 * mm)) == "cube 150 mm");
  CHECK(strength::words_for(cube(6.0 * inch)) == "cube 6 in");
  CHECK(strength::words_for(cylinder(Length{}, Length{})) == "cylinder 0x0 mm");
  CHECK(strength::plural_words_for(cylinder(4.0 * inch, 8.0 * inch)) == "cylinders 4x8 in");
}

TEST_CASE("the conversion to cylinder strength is the table's for shape and size") {
  const tables::Tables tables = hand_made_tables();
  CHECK(assessed(strength::to_cylinder(cylinder(4.0 * inch, 8.0 * inch), tables)).value ==
        Ratio::from_value(1.0));
  const Sourced<Ratio> of_cube = assessed(strength::to_cylinder(cube(150.0 * mm), tables));
  CHECK(of_cube.value == Ratio::from_value(0.8));
  CHECK(of_cube.source.id == "hand-made.to_cylinder.cube150");
}

TEST_CASE("nominal sizes in inches and in millimetres are different specimens") {
  const auto metric = strength::to_cylinder(cylinder(100.0 * mm, 200.0 * mm), hand_made_tables());
  CHECK(why_not(metric) == "the tables do not say what a cylinder 100x200 mm is worth as a cylinder");
  CHECK(
      remedy_for(metric) ==
      "test one of: cube 150 mm, cylinder 4x8 in; or add an entry to tables/specimens.toml with its source");
}

TEST_CASE("a cube does not pass for a cylinder, nor a cylinder for a cube") {
  CHECK_FALSE(is_assessed(strength::to_cylinder(cube(4.0 * inch), hand_made_tables())));
  CHECK_FALSE(is_assessed(strength::to_cylinder(cylinder(150.0 * mm, 150.0 * mm), hand_made_tables())));
}

TEST_CASE("a cube is known by its side, whatever height is written") {
  CHECK(is_assessed(strength::to_cylinder({SpecimenShape::cube, 150.0 * mm, Length{}}, hand_made_tables())));
}

TEST_CASE("where two entries are near enough, the lower conversion counts") {
  tables::Tables tables = hand_made_tables();
  tables.specimens.emplace("a like cylinder",
                           tables::SpecimenKind{"a like cylinder", "cylinder", 101.0 * mm, 203.0 * mm,
                                                made_ratio("to_cylinder.like", 0.95)});
  CHECK(assessed(strength::to_cylinder(cylinder(4.0 * inch, 8.0 * inch), tables)).value ==
        Ratio::from_value(0.95));
}
