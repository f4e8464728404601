#include "demands/insert_force.hpp"

#include <catch2/catch.hpp>

#include <limits>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::insert_force;

namespace {

piece::InsertSite on_top() {
  piece::InsertSite site;
  site.normal = {0.0, 0.0, 1.0};
  site.u = {0.0, 1.0, 0.0};
  site.v = {-1.0, 0.0, 0.0};
  return site;
}

demands::LegForce pulling(double x_kN, double y_kN, double z_kN) {
  return {1.0 * kN, {}, {x_kN * kN, y_kN * kN, z_kN * kN}};
}

}  // namespace

TEST_CASE("out of the face is tension, along it is shear") {
  const auto force = insert_force(pulling(3.0, -4.0, 12.0), on_top());
  CHECK(in(kN, force.tension) == Approx(12.0));
  CHECK(in(kN, force.shear) == Approx(5.0));
  CHECK(in(kN, force.shear_u) == Approx(-4.0));
  CHECK(in(kN, force.shear_v) == Approx(-3.0));
  CHECK_FALSE(force.presses_in);
}

TEST_CASE("on a sloping face") {
  piece::InsertSite site;
  site.normal = {0.6, 0.0, 0.8};
  site.u = {0.8, 0.0, -0.6};
  site.v = {0.0, -1.0, 0.0};
  const auto force = insert_force(pulling(0.0, 2.0, 10.0), site);
  CHECK(in(kN, force.tension) == Approx(8.0));
  CHECK(in(kN, force.shear_u) == Approx(-6.0));
  CHECK(in(kN, force.shear_v) == Approx(-2.0));
  CHECK(in(kN, force.shear) == Approx(std::hypot(6.0, 2.0)));
}

TEST_CASE("pressed into the face: no tension, all the shear, and it is said") {
  const auto force = insert_force(pulling(3.0, 4.0, -2.0), on_top());
  CHECK(force.tension == Force{});
  CHECK(in(kN, force.shear) == Approx(5.0));
  CHECK(force.presses_in);
  CHECK_FALSE(insert_force(pulling(3.0, 4.0, 0.0), on_top()).presses_in);
}

TEST_CASE("what is not a number does not become zero") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  const auto force = insert_force(pulling(1.0, 1.0, not_a_number), on_top());
  CHECK_FALSE(is_finite(force.tension));
  CHECK_FALSE(is_finite(force.shear));
  piece::InsertSite site = on_top();
  site.normal.z = not_a_number;
  CHECK_FALSE(is_finite(insert_force(pulling(0.0, 0.0, 1.0), site).tension));
}
