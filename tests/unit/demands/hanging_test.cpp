#include "demands/hanging.hpp"

#include <catch2/catch.hpp>

#include <cmath>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("one leg: the centre of gravity comes plumb below the insert") {
  HungPiece piece;
  piece.legs = {{"A1", at_m(0.3, 0.2, 0.5), 2.0 * m, does_not_stretch}};
  piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  const Hanging hanging = hung(piece);
  const double arm = std::sqrt(0.3 * 0.3 + 0.2 * 0.2 + 0.5 * 0.5);
  CHECK(in(kN, hanging.legs[0].tension) == Approx(10.0).epsilon(1e-12));
  CHECK(in(deg, hanging.legs[0].angle_from_horizontal) == Approx(90.0));
  CHECK(std::cos(hanging.tilt.value()) == Approx(0.5 / arm));
  CHECK(in(m, hanging.hook.x) == Approx(0.3 * (1.0 + 2.0 / arm)));
  CHECK(in(m, hanging.hook.z) == Approx(0.5 * (1.0 + 2.0 / arm)));
  CHECK(hanging.stable);
}

TEST_CASE("one leg stretches by T L/EA") {
  HungPiece piece;
  piece.legs = {{"A1", at_m(0.0, 0.0, 0.5), 2.0 * m, 1000.0 * kN}};
  piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  CHECK(in(m, hung(piece).hook.z) == Approx(0.5 + 2.0 * 1.01).epsilon(1e-12));
}

TEST_CASE("two legs: the piece turns about the line of the inserts until the centre of gravity is below it") {
  HungPiece piece;
  piece.legs = {{"A1", at_m(-1.0, 0.0, 0.0), 2.0 * m, does_not_stretch},
                {"A2", at_m(1.0, 0.0, 0.0), 2.0 * m, does_not_stretch}};
  piece.loads = {{at_m(0.0, 0.3, -0.4), 10.0 * kN}};
  const Hanging hanging = hung(piece);
  CHECK(hanging.up.x == Approx(0.0).margin(1e-12));
  CHECK(hanging.up.y == Approx(-0.6));
  CHECK(hanging.up.z == Approx(0.8));
  for (const auto& leg : hanging.legs) {
    CHECK(in(kN, leg.tension) == Approx(10.0 / std::sqrt(3.0)));  // 60 degrees
    CHECK(in(deg, leg.angle_from_horizontal) == Approx(60.0));
  }
  CHECK(in(kN, hanging.legs[0].on_insert.x) == Approx(10.0 / std::sqrt(3.0) * 0.5));
}

TEST_CASE("a wall panel cast flat and picked by its top edge hangs upright") {
  HungPiece panel;
  panel.legs = {{"A1", at_m(1.2, 3.0, 0.09), 3.0 * m, does_not_stretch},
                {"A2", at_m(4.8, 3.0, 0.09), 3.0 * m, does_not_stretch}};
  panel.loads = {{at_m(3.0, 1.5, 0.09), 77.0 * kN}};
  CHECK(in(deg, hung(panel).tilt) == Approx(90.0));
  panel.loads[0].at.z = 0.10 * m;  // the centre of gravity 10 mm nearer to the top face as cast
  CHECK(why_not(demands::hang(panel)) ==
        "the piece would roll over: its centre of gravity is above the picks");
  panel.upright = {0.0, 2.0, 0.0};  // the caller knows that the inserts face +y
  // The tilt is from there: how far it leans from upright.
  CHECK(in(deg, hung(panel).tilt) == Approx(std::atan(0.01 / 1.5) * 180.0 / 3.14159265358979).epsilon(1e-9));
}

TEST_CASE("a piece turned over hangs by the inserts of its other side") {
  HungPiece turned = rectangle(2.0, 2.0, 2.0, does_not_stretch, at_m(0.1, 0.0, 0.4), 50.0 * kN);
  turned.upright = {0.0, 0.0, -1.0};
  const Hanging hanging = hung(turned);
  CHECK(hanging.hook.z < Length{});
  CHECK(in(deg, hanging.tilt) == Approx(std::atan(0.1 / (std::sqrt(2.0) + 0.4)) * 180.0 / 3.14159265358979));
}

TEST_CASE("a leg too long to be needed is slack, and holds nothing") {
  HungPiece piece = rectangle(2.0, 1.0, 2.0, does_not_stretch, at_m(0.0, 0.0, -0.3), 40.0 * kN);
  piece.legs.push_back({"A5", at_m(0.2, 0.3, 0.0), 3.0 * m, does_not_stretch});
  const Hanging hanging = hung(piece);
  CHECK(hanging.legs[4].tension == Force{});
  CHECK(hanging.legs[4].on_insert.z == Force{});
  for (std::size_t i = 0; i < 4; ++i) CHECK(hanging.legs[i].tension > 10.0 * kN);
}

TEST_CASE("several loads act as one through their centre") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, 1000.0 * kN, at_m(0.2, 0.1, -0.3), 100.0 * kN);
  const Hanging one = hung(piece);
  piece.loads = {
      {at_m(0.5, 0.1, -0.3), 40.0 * kN}, {at_m(0.0, 0.1, -0.3), 60.0 * kN}, {at_m(9.0, 9.0, 9.0), Force{}}};
  const Hanging several = hung(piece);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(in(kN, several.legs[i].tension) == Approx(in(kN, one.legs[i].tension)).epsilon(1e-11));
}

TEST_CASE("legs that reach two by two but not all together are not assessed") {
  const HungPiece piece = circle(3, 1.0, 0.95, does_not_stretch, at_m(0.0, 0.0, -0.2), 10.0 * kN);
  CHECK(why_not(demands::hang(piece)) ==
        "no position was found in which the legs meet at one hook and carry the piece");
}

TEST_CASE("axial stiffness without practical limit is no stretch") {
  const HungPiece rigid = rectangle(3.0, 2.0, 3.0, does_not_stretch, at_m(0.2, 0.1, -0.3), 100.0 * kN);
  HungPiece huge = rigid;
  for (auto& leg : huge.legs) leg.axial_stiffness = 1e300 * kN;
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(in(kN, hung(huge).legs[i].tension) == in(kN, hung(rigid).legs[i].tension));
}

TEST_CASE("drawn with any of its axes up, a piece hangs the same") {
  // A block with two legs of 2 m to picks 2 m apart, 0.5 m over its centre of gravity.
  for (const Direction& up :
       {Direction{1.0, 0.0, 0.0}, Direction{0.0, 1.0, 0.0}, Direction{0.0, 0.0, 1.0},
        Direction{-1.0, 0.0, 0.0}, Direction{0.0, -1.0, 0.0}, Direction{0.6, 0.0, 0.8}}) {
    CAPTURE(up.x, up.y, up.z);
    const Direction aside =
        std::abs(up.z) < 0.9 ? cross(up, Direction{0.0, 0.0, 1.0}) : Direction{1.0, 0.0, 0.0};
    const Direction along = (1.0 / norm(aside)) * aside;
    const auto at = [&](double beside_m, double high_m) {
      return along * (beside_m * m) + up * (high_m * m);
    };
    HungPiece piece;
    piece.upright = up;
    piece.legs = {{"A1", at(-1.0, 0.5), 2.0 * m, does_not_stretch},
                  {"A2", at(1.0, 0.5), 2.0 * m, does_not_stretch}};
    piece.loads = {{at(0.0, 0.0), 10.0 * kN}};
    const Hanging hanging = hung(piece);
    CHECK(norm(hanging.up - up) < 1e-9);
    CHECK(in(deg, hanging.tilt) == Approx(0.0).margin(1e-6));
    for (const auto& leg : hanging.legs) CHECK(in(kN, leg.tension) == Approx(10.0 / std::sqrt(3.0)));
    CHECK(in(m, dot(up, hanging.hook)) == Approx(0.5 + std::sqrt(3.0)));
  }
}
