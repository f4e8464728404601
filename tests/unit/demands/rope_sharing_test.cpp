#include "demands/rope_sharing.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace firstpick::demands;

namespace {

// Four ropes from the hook to the corners of a rectangle 0.8 x 0.6 at a depth of 0.5, the load below it.
RopeSystem<1> four_ropes(double give_of_last) {
  RopeSystem<1> system;
  system.load = {1.0};
  for (const Point& p : {Point{0.4, 0.3, 0.2}, {-0.4, 0.3, 0.2}, {-0.4, -0.3, 0.2}, {0.4, -0.3, 0.2}}) {
    system.spans[system.span_count] = {{in_space, {}}, {0, p}};
    system.ropes[system.rope_count++] = {system.span_count++, 1, std::sqrt(0.5), 0.0};
  }
  system.ropes[3].give = give_of_last;
  return system;
}

Attitude<1> hanging(const RopeSystem<1>& system) {
  const std::array<Point, 3> axes = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};
  return attitude(system, std::array<Pose, 1>{{{{0.0, 0.0, -0.7}, axes}}});
}

const double quarter = 0.25 * std::sqrt(0.5) / 0.5;  // a quarter of the load along a rope

}  // namespace

TEST_CASE("four ropes that do not stretch share evenly what they carried unevenly") {
  const RopeSystem<1> system = four_ropes(0.0);
  Tensions tension{};
  for (std::size_t r = 0; r < 4; ++r) tension[r] = quarter * (r % 2 == 0 ? 1.9 : 0.1);
  share_evenly(system, hanging(system), tension);
  for (std::size_t r = 0; r < 4; ++r) CHECK(tension[r] == Approx(quarter).epsilon(1e-12));
}

TEST_CASE("a rope that stretches or is slack keeps its tension, and decides that of the other three") {
  for (const double give : {0.0, 1e-3}) {
    const RopeSystem<1> system = four_ropes(give);
    Tensions tension{};
    for (std::size_t r = 0; r < 4; ++r) tension[r] = 2.0 * quarter * (r % 2 == 0 ? 1.0 : 0.0);
    if (give > 0.0)
      for (std::size_t r = 0; r < 4; ++r) tension[r] = quarter * (r % 2 == 0 ? 1.4 : 0.6);
    const Tensions before = tension;
    share_evenly(system, hanging(system), tension);
    CAPTURE(give);
    for (std::size_t r = 0; r < 4; ++r) CHECK(tension[r] == Approx(before[r]).margin(1e-12));
  }
}

// Three ropes in one plane, the middle one plumb: statics leaves one tension open, and any sharing of theirs
// carries the same load.
TEST_CASE("what the ropes carry together does not change") {
  RopeSystem<1> system = four_ropes(0.0);
  system.spans[0].to.at = {0.5, 0.0, 0.2};
  system.spans[1].to.at = {0.0, 0.0, 0.2};
  system.spans[2].to.at = {-0.5, 0.0, 0.2};
  system.span_count = system.rope_count = 3;
  system.ropes[1].length = 0.5;
  const double side = std::sqrt(0.5);
  Tensions tension{0.0, 1.0, 0.0};
  tension[0] = tension[2] = 1e-6;
  share_evenly(system, hanging(system), tension);
  // Least of L t^2 with 2 t_side sin 45 + t_middle kept: t_side/t_middle = L_middle sin 45/L_side = 1/2.
  CHECK(tension[0] == Approx(0.5 * tension[1]).epsilon(1e-12));
  CHECK(tension[2] == Approx(tension[0]).epsilon(1e-12));
  CHECK(2.0 * tension[0] * side + tension[1] == Approx(1.0 + 2e-6 * side).epsilon(1e-12));
}

// A load off the middle: the even sharing of all four would push on the far corner.
TEST_CASE("where a rope would have to push, nothing is changed") {
  const RopeSystem<1> system = four_ropes(0.0);
  Tensions tension{1.0, 0.1, 0.05, 0.1};
  const Tensions before = tension;
  share_evenly(system, hanging(system), tension);
  CHECK(tension == before);
}
