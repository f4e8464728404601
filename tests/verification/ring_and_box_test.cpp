// Rings lifted level at even distances, and boxes hung from their top slab.
//
// Rings: Hassoun, Structural Concrete, table 21.1, read: moments at the picks and between them, torque, over w R^2. Tolerance:
// half a unit of the last digit, or one where the two columns of the table round apart. His torque of five picks, .0176, is
// not met (.0166 by his own formula, a misprint or rounding): left out. Boxes: numbers computed beforehand by a separate frame
// program of 240 elements, no publication: B = 2.0 m, H = 1.6 m, all members 4.8 kN/m and alike.
//
// Outside  piece-cracking

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "demands/box_frame.hpp"
#include "demands/ring_girder.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct Extremes {
  double at_picks = 0.0, between = 0.0, torque = 0.0, torque_at = 0.0;
};

// Radius and load per length one, turned so that no pick lies at the cut.
Extremes ring_on(int picks) {
  demands::Ring ring{.radius = 1.0 * m, .wall = 0.01 * m, .depth = 0.01 * m, .depth_counted = 0.01 * m, .poisson = 0.2,
                     .forces = {}};
  for (int i = 0; i < picks; ++i)
    ring.forces.push_back({.at = (0.3 + 2.0 * M_PI * i / picks) * radian, .up = 2.0 * M_PI / picks * newton});
  const auto state = assessed(demands::ring_state(ring));
  Extremes found;
  for (const demands::RingSection& section : state.sections) {
    found.at_picks = std::min(found.at_picks, section.bending.value());
    found.between = std::max(found.between, section.bending.value());
    const double from_pick = section.at.value() - 0.3;
    if (from_pick < 0.0 || from_pick > M_PI / picks || std::abs(section.torsion.value()) <= found.torque) continue;
    found.torque = std::abs(section.torsion.value()), found.torque_at = from_pick / deg.value();
  }
  return found;
}

}  // namespace

TEST_CASE("ring girder: Hassoun table 21.1") {
  const Extremes four = ring_on(4);
  CHECK(-four.at_picks == Approx(0.215).margin(0.0005));
  CHECK(four.between == Approx(0.110).margin(0.001));
  CHECK(four.torque == Approx(0.0330).margin(0.0002));
  CHECK(four.torque_at == Approx(19.25).margin(0.1));
  const Extremes six = ring_on(6);
  CHECK(-six.at_picks == Approx(0.093).margin(0.0005));
  CHECK(six.between == Approx(0.047).margin(0.0005));
  CHECK(six.torque == Approx(0.0094).margin(0.0001));
  const Extremes eight = ring_on(8);
  CHECK(-eight.at_picks == Approx(0.052).margin(0.0005));
  CHECK(eight.between == Approx(0.026).margin(0.0005));
  CHECK(eight.torque == Approx(0.0040).margin(0.0001));
  const Extremes twelve = ring_on(12);
  CHECK(-twelve.at_picks == Approx(0.024).margin(0.0011));
  CHECK(twelve.between == Approx(0.012).margin(0.0005));
}

TEST_CASE("ring girder: its closed form, computed") {
  struct Row {
    int picks;
    double at_picks, between, torque, torque_at;
  };
  for (const Row& row : {Row{2, 1.00000, .57080, .33067, 39.54}, Row{3, .39540, .20920, .08277, 25.79},
                         Row{4, .21460, .11072, .03313, 19.20}, Row{5, .13519, .06896, .01657, 15.31},
                         Row{6, .09310, .04720, .00947, 12.73}, Row{8, .05194, .02617, .00395, 9.53}}) {
    CAPTURE(row.picks);
    const Extremes found = ring_on(row.picks);
    CHECK(-found.at_picks == Approx(row.at_picks).margin(6e-6));
    CHECK(found.between == Approx(row.between).margin(6e-6));
    CHECK(found.torque == Approx(row.torque).margin(6e-6));
    CHECK(found.torque_at == Approx(row.torque_at).margin(0.07));  // between two sections
  }
}

TEST_CASE("box hung from its top slab: a frame program, computed") {
  struct Row {
    double c, m1, m2, top, pick, bottom;
  };
  for (const Row& row : {Row{0.0, 1.26316, -1.26316, -1.13684, 1.26316, 1.13684},
                         Row{0.3, -1.70021, -.74779, 1.08379, 2.25979, 1.65221},
                         Row{0.5, -3.09474, -.50526, 3.14526, 3.74526, 1.89474},
                         Row{.75, -4.18421, -.31579, 6.37579, 6.52579, 2.08421}}) {
    CAPTURE(row.c);
    const demands::BoxFrame box{.width = 2.0 * m, .height = 1.6 * m, .top = 0.2 * m, .bottom = 0.2 * m, .side = 0.2 * m,
                                .top_load = 4.8 * kPa, .bottom_load = 4.8 * kPa, .side_load = 4.8 * kPa,
                                .pick = row.c * m, .thrust = {}};
    const auto found = assessed(demands::box_moments(box));
    const auto kN_m = [](PlateMoment moment) { return moment.value() / 1000.0; };
    CHECK(kN_m(found.top_corner) == Approx(row.m1).margin(6e-6));
    CHECK(kN_m(found.bottom_corner) == Approx(row.m2).margin(6e-6));
    CHECK(kN_m(found.top_middle) == Approx(row.top).margin(6e-6));
    CHECK(kN_m(found.top_pick) == Approx(row.pick).margin(6e-6));
    CHECK(kN_m(found.bottom_middle) == Approx(row.bottom).margin(6e-6));
    CHECK(2.0 * found.line_of_picks.value() / 1000.0 == Approx(34.56).margin(0.005));
  }
}
