// What a piece shows to the wind, against areas worked out by hand.

#include <catch2/catch.hpp>

#include <cmath>

#include "piece/side_area.hpp"
#include "support/assessed.hpp"
#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;
using tests::assessed;

namespace {

constexpr Direction up{0.0, 0.0, 1.0};

double shown_m2(const std::vector<plan::Solid>& solids, const Direction& vertical = up) {
  return in(m2, assessed(piece::side_area(body_of(solids), vertical)).area);
}

}  // namespace

TEST_CASE("side area of a box: height times the diagonal of its plan, whichever side is up") {
  const auto panel = box("panel", at(0, 0, 0), at(6000, 3000, 200));
  CHECK(shown_m2({panel}) == Approx(0.2 * std::hypot(6.0, 3.0)).epsilon(1e-12));
  CHECK(shown_m2({panel}, {0.0, 1.0, 0.0}) == Approx(3.0 * std::hypot(6.0, 0.2)).epsilon(1e-12));
  CHECK(shown_m2({panel}, {1.0, 0.0, 0.0}) == Approx(6.0 * std::hypot(3.0, 0.2)).epsilon(1e-12));
  CHECK(shown_m2({panel}, {0.0, 0.0, -2.0}) == Approx(0.2 * std::hypot(6.0, 3.0)).epsilon(1e-12));
}

TEST_CASE("side area: the middle of a box is that of its sides") {
  const auto shown = assessed(piece::side_area(body_of({box("block", at(0, 0, 0), at(2000, 1000, 500))}), up));
  CHECK(in(m, shown.centre.z) == Approx(0.25).margin(1e-12));
}

TEST_CASE("side area of a cylinder that stands or lies: never less than its shadow, 1.5 % more at most") {
  const auto drum = cylinder("drum", at(0, 0, 0), 1.2 * m, 2.0 * m);
  const double standing = shown_m2({drum});
  CHECK(standing >= 1.2 * 2.0);
  CHECK(standing <= 1.015 * 1.2 * 2.0);
  const double lying = shown_m2({drum}, {1.0, 0.0, 0.0});  // its side, or its end, or both aslant
  const double most = std::hypot(1.2 * 2.0, M_PI * 0.36);
  CHECK(lying >= most * (1.0 - 1e-9));
  CHECK(lying <= 1.015 * most);
}

TEST_CASE("side area of a box culvert: the hollow does not count where the outline is less") {
  const auto outside = box("outside", at(0, 0, 0), at(2000, 3000, 2000));
  const auto barrel = cut(box("barrel", at(200, 0, 200), at(1600, 3000, 1600)));
  const double shown = shown_m2({outside, barrel});
  CHECK(shown >= 2.0 * 3.0);  // its side
  CHECK(shown == Approx(2.0 * std::hypot(2.0, 3.0)).epsilon(1e-12));
}

TEST_CASE("side area of an upright panel with a window: the wind blows through") {
  const auto panel = box("panel", at(0, 0, 0), at(4000, 200, 3000));
  const auto window = cut(box("window", at(1500, 0, 1000), at(1000, 200, 1000)));
  const double shown = shown_m2({panel, window});
  const double face = 4.0 * 3.0 - 1.0;
  CHECK(shown >= face);
  CHECK(shown == Approx(std::hypot(face, 3.0 * 0.2 + 1.0 * 0.2)).epsilon(1e-12));  // its reveals with it
}

TEST_CASE("side area: a curved face of a body that the kernel does not hold is not known") {
  piece::Body body;
  piece::Face round;
  round.area = 1.0 * m2;
  body.faces = {round};
  CHECK_FALSE(is_assessed(piece::side_area(body, up)));
  CHECK_FALSE(is_assessed(piece::side_area(piece::Body{}, up)));  // nothing that shows
}
