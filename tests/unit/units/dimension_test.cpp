// Dimensions are read from the types; here they are written by hand once (in sixths of a power).

#include "units/dimension.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;

TEST_CASE("dimensions of the quantities") {
  CHECK(dimension_of<Length>() == Dimension{.length = 6});
  CHECK(dimension_of<Area>() == Dimension{.length = 12});
  CHECK(dimension_of<Volume>() == Dimension{.length = 18});
  CHECK(dimension_of<Mass>() == Dimension{.mass = 6});
  CHECK(dimension_of<Density>() == Dimension{.length = -18, .mass = 6});
  CHECK(dimension_of<Force>() == Dimension{.length = 6, .mass = 6, .time = -12});
  CHECK(dimension_of<Stress>() == Dimension{.length = -6, .mass = 6, .time = -12});
  CHECK(dimension_of<Moment>() == Dimension{.length = 12, .mass = 6, .time = -12});
  CHECK(dimension_of<Angle>() == Dimension{.angle = 6});
  CHECK(dimension_of<Duration>() == Dimension{.time = 6});
  CHECK(dimension_of<Speed>() == Dimension{.length = 6, .time = -6});
  CHECK(dimension_of<Acceleration>() == Dimension{.length = 6, .time = -12});
  CHECK(dimension_of<Temperature>() == Dimension{.temperature = 6});
  CHECK(dimension_of<Ratio>() == Dimension{});
  CHECK(dimension_of<Stiffness>() == Dimension{.mass = 6, .time = -12});
}

TEST_CASE("dimensions with broken powers") {
  CHECK(dimension_of<RootStress>() == Dimension{.length = -3, .mass = 3, .time = -6});
  CHECK(dimension_of<BreakoutCoefficient>() == Dimension{.length = 0, .mass = 3, .time = -6});
  CHECK(dimension_of<DeepBreakoutCoefficient>() == Dimension{.length = -1, .mass = 3, .time = -6});
}

TEST_CASE("dimensions add as quantities multiply") {
  CHECK(dimension_of<Force>() + dimension_of<Length>() == dimension_of<Moment>());
  CHECK(dimension_of<Force>() - dimension_of<Area>() == dimension_of<Stress>());
}
