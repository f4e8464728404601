// Rings and boxes: what the tables of tests/verification do not show.

#include <algorithm>
#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "demands/box_frame.hpp"
#include "demands/ring_girder.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

Ring thin_ring() {
  return {.radius = 1.0 * m, .wall = 0.1 * m, .depth = 0.4 * m, .depth_counted = 0.4 * m, .poisson = 0.2, .forces = {}};
}

Ring on_picks(int picks, double up_N, double inward_N = 0.0) {
  Ring ring = thin_ring();
  for (int i = 0; i < picks; ++i)
    ring.forces.push_back({.at = (0.3 + 2.0 * M_PI * i / picks) * radian, .up = up_N * newton, .inward = inward_N * newton});
  return ring;
}

}  // namespace

TEST_CASE("a ring pinched by two level forces: P R/pi under them, P R (1/2 - 1/pi) between, P/2 of compression") {
  const auto state = assessed(ring_state(on_picks(2, 1.0, 1.0)));
  double least = 0.0, most = 0.0, axial = 0.0;
  for (const RingSection& section : state.sections) {
    least = std::min(least, section.level_bending.value());
    most = std::max(most, section.level_bending.value());
    axial = std::min(axial, section.axial.value());
  }
  CHECK(std::max(most, -least) == Approx(1.0 / M_PI).epsilon(1e-4));
  CHECK(std::min(most, -least) == Approx(0.5 - 1.0 / M_PI).epsilon(1e-4));
  CHECK(axial == Approx(-0.5).epsilon(1e-4));
}

TEST_CASE("inward forces at the top all round turn the ring's section: tension below, moment t R") {
  Ring ring = thin_ring();
  for (int i = 0; i < 90; ++i)
    ring.forces.push_back({.at = 2.0 * M_PI * i / 90 * radian, .up = 1e-3 * newton,
                           .inward = 2.0 * M_PI / 90.0 * newton, .above_middle = 1.0 * m});
  const auto state = assessed(ring_state(ring));
  for (const RingSection& section : state.sections) CHECK(section.bending.value() == Approx(1.0).epsilon(0.01));
}

TEST_CASE("picks outside the middle line twist the ring: tension at the top, moment P e over 2 pi") {
  Ring ring = thin_ring();
  for (int i = 0; i < 90; ++i)
    ring.forces.push_back({.at = 2.0 * M_PI * i / 90 * radian, .up = 2.0 * M_PI / 90.0 * newton,
                           .outside_middle = 0.01 * m});
  const auto state = assessed(ring_state(ring));
  double mean = 0.0;
  for (const RingSection& section : state.sections) mean += section.bending.value() / static_cast<double>(state.sections.size());
  CHECK(std::abs(mean) == Approx(0.01).epsilon(0.05));
}

TEST_CASE("the ring closes, and its tension is at least that of bending alone") {
  const auto state = assessed(ring_state(on_picks(3, 1000.0, 577.0)));
  CHECK(state.sections.front().bending.value() == Approx(state.sections.back().bending.value()).margin(1e-6));
  CHECK(state.sections.front().torsion.value() == Approx(state.sections.back().torsion.value()).margin(1e-6));
  const RingSection& most = state.most_tension();
  CHECK(most.tension.value() >= 6.0 * std::abs(most.bending.value()) / (0.1 * 0.4 * 0.4));
  Ring shallow = on_picks(3, 1000.0, 577.0);
  shallow.depth_counted = 0.2 * m;
  CHECK(assessed(ring_state(shallow)).most_tension().tension > most.tension);
}

TEST_CASE("torsion of rectangles: 0.1406 and 0.208, 0.229 and 0.246, a third when long") {
  CHECK(torsion_stiffness(1.0, 1.0) == Approx(0.1406).margin(0.00005));
  CHECK(1.0 / torsion_shear(1.0, 1.0) == Approx(0.208).margin(0.0005));
  CHECK(torsion_stiffness(2.0, 1.0) == Approx(0.229).margin(0.0005));
  CHECK(1.0 / torsion_shear(2.0, 1.0) == Approx(0.246).margin(0.0005));
  CHECK(torsion_stiffness(1000.0, 1.0) == Approx(1.0 / 3.0).epsilon(0.001));
}

TEST_CASE("a ring that cannot be computed is not assessed") {
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  Ring ring = on_picks(3, 1000.0);
  SECTION("no picks") { ring.forces.clear(); }
  SECTION("one pick carries all") { ring.forces.resize(1); }
  SECTION("picks to one side") { ring.forces[1].at = ring.forces[0].at; }
  SECTION("a leg that pulls aside") { ring.forces[0].inward = 500.0 * newton; }
  SECTION("legs that pull round") { for (RingForce& force : ring.forces) force.around = 500.0 * newton; }
  SECTION("no number") { ring.forces[1].up = no_number * newton; }
  SECTION("no place") { ring.forces[1].at = no_number * radian; }
  SECTION("no radius") { ring.radius = 0.0 * m; }
  SECTION("no wall") { ring.wall = no_number * m; }
  SECTION("no depth") { ring.depth_counted = 0.0 * m; }
  CHECK_FALSE(is_assessed(ring_state(ring)));
}

TEST_CASE("a box: thrust above the middle of the slab bends it, nothing unusable is assessed") {
  BoxFrame box{.width = 2.0 * m, .height = 1.6 * m, .top = 0.2 * m, .bottom = 0.2 * m, .side = 0.2 * m,
               .top_load = 4.8 * kPa, .bottom_load = 4.8 * kPa, .side_load = 4.8 * kPa, .pick = 0.3 * m, .thrust = {}};
  const auto upright = assessed(box_moments(box));
  box.thrust = PlateMoment::from_value(1000.0);
  const auto inclined = assessed(box_moments(box));
  // Statics of the top slab: corner, pick and middle move together but for the thrust between the picks.
  CHECK((inclined.top_middle - inclined.top_corner - (upright.top_middle - upright.top_corner)).value() ==
        Approx(-1000.0));
  CHECK((inclined.top_pick - inclined.top_corner - (upright.top_pick - upright.top_corner)).value() ==
        Approx(0.0).margin(1e-9));
  CHECK(inclined.top_corner > upright.top_corner);  // the slab pulls its corners after it
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  SECTION("span") { box.width = 0.0 * m; }
  SECTION("thickness") { box.side = no_number * m; }
  SECTION("pick beyond the middle") { box.pick = 1.1 * m; }
  SECTION("pick outside") { box.pick = -0.1 * m; }
  SECTION("load") { box.side_load = no_number * kPa; }
  CHECK_FALSE(is_assessed(box_moments(box)));
}
