#include "demands/rope_descent.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace firstpick::demands;

namespace {

// One rope of length 1 from the hook to a point 0.5 above the load.
RopeSystem<1> one_rope() {
  RopeSystem<1> system;
  system.load = {1.0};
  system.spans[0] = {{in_space, {}}, {0, {0.0, 0.0, 0.5}}};
  system.ropes[0] = {0, 1, 1.0, 0.0};
  system.span_count = system.rope_count = 1;
  return system;
}

}  // namespace

TEST_CASE("a bowl is left as it is, a saddle is made one") {
  Curvature<1> curvature{};
  for (std::size_t i = 0; i < 6; ++i) curvature[i][i] = 1.0;
  CHECK(is_bowl<1>(curvature));
  CHECK(make_bowl<1>(curvature) == 0.0);
  CHECK(curvature[3][3] == 1.0);

  curvature[3][3] = -2.0;
  CHECK_FALSE(is_bowl<1>(curvature));
  const double added = make_bowl<1>(curvature);
  CHECK(added > 2.0);
  CHECK(curvature[0][0] == 1.0 + added);
  CHECK(is_bowl<1>(curvature));
}

TEST_CASE("from a pose on its side, slack, the load ends below the hook") {
  const RopeSystem<1> system = one_rope();
  const std::array<Pose, 1> on_its_side = {
      {{{0.3, 0.1, -0.2}, {{{0.0, 0.0, -1.0}, {0.0, 1.0, 0.0}, {1.0, 0.0, 0.0}}}}}};
  Attitude<1> at = attitude(system, on_its_side);
  const Descent descent{0.02, 1e-9};
  go_downhill(system, at, descent);
  CHECK(at.poses[0].origin.x == Approx(0.0).margin(1e-7));
  CHECK(at.poses[0].origin.y == Approx(0.0).margin(1e-7));
  CHECK(at.poses[0].origin.z == Approx(-(1.0 + 0.02 + 0.5)).margin(1e-9));
  CHECK(at.poses[0].axes[2].z == Approx(1.0));
  CHECK(give_in(descent, system.ropes[0]) == 0.02);
  CHECK(give_in(descent, Rope{0, 1, 1.0, 0.05}) == 0.05);
}

TEST_CASE("a curvature that is no number is made no bowl, and the attempt comes to an end") {
  Curvature<1> curvature{};
  for (std::size_t i = 0; i < 6; ++i) curvature[i][i] = 1.0;
  curvature[2][2] = std::nan("");
  CHECK_FALSE(is_bowl<1>(curvature));
  CHECK(make_bowl<1>(curvature) >= 1e9);
  CHECK_FALSE(is_bowl<1>(curvature));
}

TEST_CASE("where nothing pulls, and where the load is no number, the descent stays where it is") {
  for (const double load : {0.0, std::nan(""), double{INFINITY}, 1e200}) {  // of the last its step has no end
    CAPTURE(load);
    RopeSystem<1> system = one_rope();
    system.load = {load};
    const std::array<Pose, 1> slack = {
        {{{0.1, 0.0, -0.7}, {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}}}}};
    Attitude<1> at = attitude(system, slack);
    go_downhill(system, at, {0.02, 1e-9});
    CHECK(at.poses[0].origin.x == 0.1);
    CHECK(at.poses[0].origin.z == -0.7);
  }
}
