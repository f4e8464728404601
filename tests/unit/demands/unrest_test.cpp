#include "demands/unrest.hpp"

#include <catch2/catch.hpp>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

HungPiece two_legs(double load_z_m, double load_y_m = 0.0) {
  HungPiece piece;
  piece.legs = {{"A1", at_m(-1.0, 0.0, 0.0), 2.0 * m, does_not_stretch},
                {"A2", at_m(1.0, 0.0, 0.0), 2.0 * m, does_not_stretch}};
  piece.loads = {{at_m(0.0, load_y_m, load_z_m), 10.0 * kN}};
  return piece;
}

}  // namespace

TEST_CASE("two picks: the centre of gravity above, level with and below their line") {
  const std::string above = "the piece would roll over: its centre of gravity is above the picks";
  const std::string level =
      "the piece would roll: its centre of gravity is level with the picks, and nothing brings it back";
  CHECK(why_not(demands::hang(two_legs(0.5))) == above);
  CHECK(why_not(demands::hang(two_legs(0.5, 0.05))) == above);
  CHECK(why_not(demands::hang(two_legs(1e-4))) ==
        "the piece would roll: its centre of gravity is above the picks");
  CHECK(why_not(demands::hang(two_legs(0.0))) == level);
  CHECK(hung(two_legs(-1e-4)).stable);
  CHECK(hung(two_legs(-0.5)).stable);
  CHECK_FALSE(remedy_for(demands::hang(two_legs(0.5))).empty());
}

TEST_CASE("one pick at the centre of gravity holds no attitude") {
  HungPiece piece = two_legs(-0.5);
  piece.legs.resize(1);
  piece.loads[0].at = piece.legs[0].at;
  CHECK(why_not(demands::hang(piece)) ==
        "the piece would roll: its centre of gravity is level with the picks, and nothing brings it back");
}

TEST_CASE("three picks in a line are two") {
  HungPiece piece = two_legs(0.3);
  piece.legs.push_back({"A3", at_m(0.0, 0.0, 0.0), std::sqrt(3.0) * m, does_not_stretch});
  CHECK(why_not(demands::hang(piece)) ==
        "the piece would roll over: its centre of gravity is above the picks");
  piece.loads[0].at.z = -0.3 * m;
  CHECK(hung(piece).stable);
}

// Two equalised legs of 3 m to inserts 2 m apart: the hook runs on an ellipse with semi-axes 3 and sqrt(8) m
// about the inserts, curvature of its top sqrt(8)/9 per m. The load centre stays below the hook only if its
// distance from the hook is more than the radius 9/sqrt(8) = 3.1820 m: more than 0.3536 m below the inserts.
TEST_CASE("equalised legs tip the piece unless its centre of gravity is low") {
  HungPiece piece = two_legs(-0.35);
  for (auto& leg : piece.legs) leg.length = 3.0 * m;
  piece.equalised = {{0, 1}};
  CHECK(in(deg, hung(piece).tilt) > 5.0);
  piece.loads[0].at.z = -0.357 * m;
  CHECK(in(deg, hung(piece).tilt) == Approx(0.0).margin(1e-6));
}

TEST_CASE("the side that was up at the start decides what rolling over is") {
  HungPiece piece = two_legs(-0.5);
  piece.upright = {0.0, 0.1, -1.0};
  CHECK(why_not(demands::hang(piece)) ==
        "the piece would roll over: its centre of gravity is above the picks");
}

TEST_CASE("with the picks above the centre of gravity another reason is given") {
  const HungPiece piece = two_legs(-0.5);
  CHECK(demands::rolled_over(piece, hung(piece)).why ==
        "the piece would turn by more than a right angle before it hangs");
  CHECK(demands::would_move(piece, hung(piece)).why ==
        "the piece would not hang still: it can move without lifting its weight");
}

// The reason is told from pose and tensions alone: poses as they were, loads and legs changed by hand.
TEST_CASE("legs to a beam are no picks: the piece rolls over though the beam is high above") {
  HungPiece piece = two_legs(-0.5);
  const Hanging hanging = hung(piece);
  const std::string above = "the piece would roll over: its centre of gravity is above the picks";
  const std::string far = "the piece would turn by more than a right angle before it hangs";
  piece.loads[0].at.z = 0.001 * m;
  CHECK(demands::rolled_over(piece, hanging).why == above);
  piece.loads[0].at.z = -0.001 * m;
  CHECK(demands::rolled_over(piece, hanging).why == far);
  piece.loads[0].at.z = 0.001 * m;
  piece.carriers = {{"beam", 1.0 * kN, at_m(0.0, 0.0, 0.0), false}};
  piece.legs.push_back({"beam", at_m(-4.0, 0.0, 5.0), 2.0 * m, does_not_stretch});
  piece.legs.back().to_carrier = 0;
  Hanging with_beam = hanging;
  with_beam.legs.push_back(with_beam.legs.front());
  CHECK(demands::rolled_over(piece, with_beam).why == above);
}

TEST_CASE("slack picks hold nothing: without a taut one the piece is as level with its picks") {
  HungPiece piece = two_legs(-0.5);
  Hanging hanging = hung(piece);
  for (auto& leg : hanging.legs) leg.tension = 1e-9 * 10.0 * kN;  // of the load: does not count
  CHECK(demands::would_move(piece, hanging).why ==
        "the piece would roll: its centre of gravity is level with the picks, and nothing brings it back");
  piece.loads[0].at.z = 0.5 * m;
  CHECK(demands::rolled_over(piece, hanging).why ==
        "the piece would turn by more than a right angle before it hangs");
  for (auto& leg : hanging.legs) leg.tension = 1.1e-9 * 10.0 * kN;
  CHECK(demands::rolled_over(piece, hanging).why ==
        "the piece would roll over: its centre of gravity is above the picks");
}

TEST_CASE("a piece on a rope over a sheave tips, if it is more than one leg and carries") {
  HungPiece piece = two_legs(-0.5);
  Hanging hanging = hung(piece);
  const std::string tips =
      "the piece would tip: the equalised legs run over their sheave, and the centre of gravity is not low "
      "enough below the picks to stop them";
  const std::string still = "the piece would not hang still: it can move without lifting its weight";
  CHECK(demands::would_move(piece, hanging).why == still);
  piece.equalised = {{0}};
  CHECK(demands::would_move(piece, hanging).why == still);
  piece.equalised = {{0}, {1, 0}};
  CHECK(demands::would_move(piece, hanging).why == tips);
  piece.equalised = {{0, 1}};
  CHECK(demands::would_move(piece, hanging).why == tips);
  for (auto& leg : hanging.legs) leg.tension = Force{};
  CHECK_FALSE(demands::would_move(piece, hanging).why == tips);
}

TEST_CASE("what moves most in the small move is told: the piece, a beam, or a sheave with its piece") {
  HungPiece piece = two_legs(-0.5);
  const Hanging hanging = hung(piece);
  piece.carriers = {{"spreader", 1.0 * kN, {}, false}, {"sheave", 1.0 * kN, {}, true}};
  const std::string still = "the piece would not hang still: it can move without lifting its weight";
  CHECK(demands::would_stir(piece, hanging, 0).why == still);
  CHECK(demands::would_stir(piece, hanging, 1).why ==
        "spreader would not hang still: it can turn or swing without lifting its load");
  CHECK(demands::would_stir(piece, hanging, 2).why == still);
}
