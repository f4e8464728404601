#include "demands/hanging_refusal.hpp"

#include <catch2/catch.hpp>

#include <limits>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

HungPiece good() { return rectangle(3.0, 2.0, 3.0, 1000.0 * kN, at_m(0.0, 0.0, -0.5), 100.0 * kN); }

// The reason; hang() must give the same one, with a remedy.
std::string refused(const HungPiece& piece) {
  const auto refusal = demands::hanging_refusal(piece);
  REQUIRE(refusal);
  CHECK_FALSE(refusal->remedy.empty());
  CHECK(why_not(demands::hang(piece)) == refusal->why);
  return refusal->why;
}

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("a sound piece is not refused") { CHECK_FALSE(demands::hanging_refusal(good())); }

TEST_CASE("no legs, and more than are computed") {
  HungPiece none = good();
  none.legs.clear();
  CHECK(refused(none) == "the rigging has no legs");
  CHECK_FALSE(demands::hanging_refusal(circle(24, 1.0, 3.0, 10.0 * kN, at_m(0, 0, -1), 10.0 * kN)));
  CHECK(refused(circle(25, 1.0, 3.0, 10.0 * kN, at_m(0, 0, -1), 10.0 * kN)) ==
        "the rigging has 25 legs, more than the 24 that are computed");
}

TEST_CASE("numbers of a leg that are none") {
  for (const double bad : {0.0, -1.0, not_a_number, infinite}) {
    CAPTURE(bad);
    HungPiece piece = good();
    piece.legs[2].length = bad * m;
    CHECK(refused(piece) == "the length of the leg to A3 is not a finite length above zero");
  }
  for (const double bad : {0.0, -1.0, not_a_number}) {
    CAPTURE(bad);
    HungPiece piece = good();
    piece.legs[1].axial_stiffness = bad * kN;
    CHECK(refused(piece) == "the axial stiffness of the leg to A2 is not above zero");
  }
  for (const double bad : {not_a_number, infinite, -infinite}) {
    CAPTURE(bad);
    HungPiece piece = good();
    piece.legs[3].at.y = bad * m;
    CHECK(refused(piece) == "the place of insert A4 is not a finite number");
  }
}

TEST_CASE("loads that are none") {
  for (const double bad : {-1.0, not_a_number, infinite}) {
    CAPTURE(bad);
    HungPiece piece = good();
    piece.loads.push_back({at_m(0, 0, 0), bad * kN});
    CHECK(refused(piece) == "a load on the piece is not a finite force downwards at a known place");
  }
  HungPiece nowhere = good();
  nowhere.loads[0].at.x = not_a_number * m;
  CHECK(refused(nowhere) == "a load on the piece is not a finite force downwards at a known place");
  HungPiece weightless = good();
  weightless.loads = {{at_m(0, 0, 0), Force{}}};
  CHECK(refused(weightless) == "the piece has no weight");
  weightless.loads.clear();
  CHECK(refused(weightless) == "the piece has no weight");
  HungPiece overflowing = good();
  overflowing.loads = {{at_m(0, 0, 0), 1e308 * newton}, {at_m(0, 0, 0), 1e308 * newton}};
  CHECK(refused(overflowing) == "the piece has no weight");
}

TEST_CASE("groups of equalised legs") {
  HungPiece piece = good();
  piece.equalised = {{0, 4}};
  CHECK(refused(piece) == "a leg is equalised that does not exist, or twice");
  piece.equalised = {{0, 1}, {1, 2}};
  CHECK(refused(piece) == "a leg is equalised that does not exist, or twice");
  piece.equalised = {{}, {0, 1}};
  CHECK_FALSE(demands::hanging_refusal(piece));
}

TEST_CASE("two legs to one place") {
  HungPiece piece = good();
  piece.legs[1].at = piece.legs[0].at;
  CHECK(refused(piece) == "inserts A1 and A2 are at the same place");
}

TEST_CASE("legs reach a common hook only if longer than the distance of their inserts") {
  const std::string why =
      "the legs to A1 and A2 together are not longer than the distance between their inserts: they cannot "
      "meet at one "
      "hook";
  HungPiece two = good();
  two.legs.resize(2);  // 3 m apart
  two.legs[0].length = 1.0 * m;
  two.legs[1].length = 2.0 * m;
  CHECK(refused(two) == why);
  two.legs[1].length = std::nextafter(2.0, 3.0) * m;
  CHECK_FALSE(demands::hanging_refusal(two));
  two.legs[1].length = 1.9 * m;
  two.equalised = {{0, 1}};  // one rope of 2.9 m
  CHECK(refused(two) == why);
}

TEST_CASE("the upright must be a direction") {
  for (const Direction& bad : {Direction{0.0, 0.0, 0.0}, Direction{not_a_number, 0.0, 1.0}}) {
    HungPiece piece = good();
    piece.upright = bad;
    CHECK(refused(piece) == "the upright direction of the piece is not known");
  }
}

TEST_CASE("a leg that starts at no place, or at a body that is not there, is refused") {
  const std::string no_body = "the leg to A2 does not end on two bodies of this rigging";
  for (const double bad : {not_a_number, infinite})
    for (Length Position::*const axis : {&Position::x, &Position::y, &Position::z}) {
      HungPiece piece = good();
      piece.legs[1].from_at.*axis = bad * m;
      CHECK(refused(piece) == no_body);
    }
  HungPiece piece = good();
  piece.legs[1].from_carrier = 0;
  CHECK(refused(piece) == no_body);
  piece = good();
  piece.legs[1].to_carrier = 3;
  CHECK(refused(piece) == no_body);
}
