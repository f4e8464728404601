#include "demands/leg_force.hpp"

#include <catch2/catch.hpp>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("a leg pulls its insert straight towards the hook") {
  const auto leg = demands::leg_force(at_m(1.0, 2.0, 0.0), 10.0 * kN, at_m(4.0, 2.0, 4.0), {0.0, 0.0, 1.0});
  CHECK(in(kN, leg.tension) == 10.0);
  CHECK(in(kN, leg.on_insert.x) == Approx(6.0));
  CHECK(in(kN, leg.on_insert.y) == Approx(0.0).margin(1e-15));
  CHECK(in(kN, leg.on_insert.z) == Approx(8.0));
  CHECK(sine(leg.angle_from_horizontal) == Approx(0.8));
}

TEST_CASE("the angle is from the horizontal of the hanging piece, below it negative") {
  const Position insert = at_m(0.0, 0.0, 0.0), hook = at_m(0.0, 0.0, 2.0);
  CHECK(in(deg, demands::leg_force(insert, 1.0 * kN, hook, {1.0, 0.0, 0.0}).angle_from_horizontal) ==
        Approx(0.0).margin(1e-12));
  CHECK(in(deg, demands::leg_force(insert, 1.0 * kN, hook, {0.6, 0.0, 0.8}).angle_from_horizontal) ==
        Approx(53.13010235));
  CHECK(in(deg, demands::leg_force(insert, 1.0 * kN, hook, {0.0, 0.0, -1.0}).angle_from_horizontal) ==
        Approx(-90.0));
}

TEST_CASE("a hook at the insert has no direction") {
  CHECK_FALSE(std::isfinite(demands::towards_hook(at_m(1, 1, 1), at_m(1, 1, 1)).x));
}
