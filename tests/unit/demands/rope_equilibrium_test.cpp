#include "demands/rope_equilibrium.hpp"

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/rope_balance.hpp"

using namespace firstpick::demands;

namespace {

const std::array<Point, 3> as_cast = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};

// A piece of load 1 on ropes of length 1 from the hook to points in its axes.
RopeSystem<1> on_ropes(std::initializer_list<Point> points, double give) {
  RopeSystem<1> system;
  system.load = {1.0};
  for (const Point& p : points) {
    system.spans[system.span_count] = {{in_space, {}}, {0, p}};
    system.ropes[system.rope_count++] = {system.span_count++, 1, 1.0, give};
  }
  return system;
}

std::array<Pose, 1> below(double z) { return {{{{0.0, 0.0, z}, as_cast}}}; }

}  // namespace

TEST_CASE("a load on one rope stretches it by its give") {
  for (const double give : {0.0, 1e-9, 1e-3, 0.5}) {
    const Rest<1> rest = come_to_rest<1>(on_ropes({{0.0, 0.0, 0.25}}, give), below(-1.0));
    CAPTURE(give);
    REQUIRE(rest.ending == Ending::at_rest);
    CHECK(rest.tension[0] == Approx(1.0).epsilon(1e-12));
    CHECK(rest.poses[0].origin.z == Approx(-1.25 - give).epsilon(1e-12));
  }
}

TEST_CASE("a load above its one pick is not at rest, and finds its way below") {
  const RopeSystem<1> system = on_ropes({{0.0, 0.0, -0.25}}, 0.0);
  for (const double aside : {0.0, 0.01}) {
    const Rest<1> rest = come_to_rest<1>(system, {{{{aside, 0.0, -0.75}, as_cast}}});
    CHECK(rest.ending == Ending::at_rest);
    CHECK(rest.poses[0].origin.z == Approx(-1.25));
  }
}

TEST_CASE("ropes that cannot meet at the hook have no balance") {
  CHECK(come_to_rest<1>(on_ropes({{1.1, 0.0, 0.0}, {-1.1, 0.0, 0.0}}, 0.0), below(-0.5)).ending ==
        Ending::not_found);
}

TEST_CASE("the balance refuses a start from which it does not get there") {
  const RopeSystem<1> system = on_ropes({{0.0, 0.0, 0.25}}, 0.0);
  Attitude<1> at = attitude(system, below(-5.0));
  Tensions tension{1.0};
  CHECK_FALSE(balance(system, at, tension, 0.02, Rigid::nearly));
}

// A spreader: two top slings of 60 degrees to a beam of length 1, two vertical legs to the piece. Closed form
// of statics (a triangle of forces): top sling W/(2 sin 60), each leg W/2.
TEST_CASE("a piece below a beam: two bodies in the same sum") {
  const double half = 0.5, height = half * std::tan(3.14159265358979323846 / 3.0);
  RopeSystem<2> system;
  system.load = {0.0, 1.0};
  // The top pins are above the axis of the beam, the bottom pins below: the beam itself has no weight here.
  system.spans[0] = {{in_space, {}}, {0, {half, 0.0, 0.1}}};
  system.spans[1] = {{in_space, {}}, {0, {-half, 0.0, 0.1}}};
  system.spans[2] = {{0, {half, 0.0, -0.1}}, {1, {half, 0.0, 0.3}}};
  system.spans[3] = {{0, {-half, 0.0, -0.1}}, {1, {-half, 0.0, 0.3}}};
  for (std::size_t r = 0; r < 4; ++r) system.ropes[r] = {r, 1, r < 2 ? 1.0 : 0.4, 0.0};
  system.span_count = system.rope_count = 4;

  const std::array<Pose, 2> start = {{{{0.0, 0.02, -0.8}, as_cast}, {{0.05, 0.0, -1.4}, as_cast}}};
  const Rest<2> rest = come_to_rest<2>(system, start);
  REQUIRE(rest.ending == Ending::at_rest);
  for (const std::size_t top : {0U, 1U})
    CHECK(rest.tension[top] == Approx(1.0 / std::sqrt(3.0)).epsilon(1e-9));
  for (const std::size_t leg : {2U, 3U}) CHECK(rest.tension[leg] == Approx(0.5).epsilon(1e-9));
  CHECK(rest.poses[0].origin.z == Approx(-height - 0.1).epsilon(1e-9));
  CHECK(rest.poses[1].origin.z == Approx(-height - 0.2 - 0.4 - 0.3).epsilon(1e-9));

  // Load off the middle by a fifth of the half-length: the legs share 0.6 to 0.4, and the hook stays above
  // the load, so that beam and piece tilt together.
  for (const std::size_t s : {2U, 3U}) system.spans[s].to.at.x -= 0.1;
  const Rest<2> tilted = come_to_rest<2>(system, start);
  REQUIRE(tilted.ending == Ending::at_rest);
  CHECK(tilted.poses[1].origin.x == Approx(0.0).margin(1e-9));
  CHECK(tilted.poses[1].origin.y == Approx(0.0).margin(1e-9));
  const double vertical = tilted.tension[2] + tilted.tension[3];
  CHECK(vertical == Approx(1.0).epsilon(1e-3));  // the legs lean a little
  CHECK(tilted.tension[2] > tilted.tension[3]);
}
