#include <catch2/catch.hpp>

#include <cmath>

#include "demands/hanging.hpp"
#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::vector<demands::Sharing> sharings(const HungPiece& piece) {
  return assessed(demands::basic_distributions(piece, hung(piece)));
}

}  // namespace

TEST_CASE("a rectangle has two: each diagonal with half the load on either leg") {
  const HungPiece piece = rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0.0, 0.0, -0.4), 100.0 * kN);
  const auto all = sharings(piece);
  REQUIRE(all.size() == 2);
  CHECK(all[0].name == "legs A1 and A3 only");
  CHECK(all[1].name == "legs A2 and A4 only");
  const double sine_of_leg = sine(hung(piece).legs[0].angle_from_horizontal);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(in(kN, all[i % 2].legs[i].tension) == Approx(50.0 / sine_of_leg).epsilon(1e-9));
    CHECK(in(kN, all[i % 2].legs[i].on_insert.z) == Approx(50.0).epsilon(1e-9));
    CHECK(all[1 - i % 2].legs[i].tension == Force{});
    CHECK(all[1 - i % 2].legs[i].on_insert.z == Force{});
    CHECK(all[0].legs[i].angle_from_horizontal == all[1].legs[i].angle_from_horizontal);
  }
}

TEST_CASE("with the centre of gravity off the middle three legs carry") {
  const auto all = sharings(rectangle(3.0, 2.0, 3.0, does_not_stretch, at_m(0.2, 0.1, -0.4), 100.0 * kN));
  REQUIRE(all.size() == 2);
  CHECK(all[0].name == "legs A1, A2 and A4 only");
  CHECK(all[1].name == "legs A1, A3 and A4 only");
}

TEST_CASE("where statics alone decides there is one") {
  HungPiece two = rectangle(3.0, 2.0, 3.0, does_not_stretch, at_m(0.0, 1.0, -0.4), 100.0 * kN);
  two.legs.resize(2);
  REQUIRE(sharings(two).size() == 1);
  CHECK(sharings(two)[0].name == "all legs");
  const HungPiece three = circle(3, 1.2, 2.5, does_not_stretch, at_m(0.1, 0.0, -0.1), 50.0 * kN);
  REQUIRE(sharings(three).size() == 1);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(in(kN, sharings(three)[0].legs[i].tension) ==
          Approx(in(kN, hung(three).legs[i].tension)).epsilon(1e-9));
}

TEST_CASE("an equalised pair is one rope") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, does_not_stretch, at_m(0.05, 0.02, -1.0), 100.0 * kN);
  piece.equalised = {{0, 2}, {1, 3}};
  const auto pairs = sharings(piece);
  REQUIRE(pairs.size() == 1);
  CHECK(pairs[0].name == "all legs");
  CHECK(pairs[0].legs[0].tension == pairs[0].legs[2].tension);

  piece.equalised = {{1, 3}};  // one pair, two free legs
  for (const auto& sharing : sharings(piece)) CHECK(sharing.legs[1].tension == sharing.legs[3].tension);
}

TEST_CASE("one leg of many may carry all alone") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, does_not_stretch, at_m(0.0, 0.0, -0.4), 100.0 * kN);
  piece.legs.push_back({"A5", at_m(0.0, 0.0, 0.0), std::sqrt(9.0 - 1.5 * 1.5 - 1.0) * m, does_not_stretch});
  const auto all = sharings(piece);
  REQUIRE(all.size() == 3);
  CHECK(all[2].name == "leg A5 only");
  CHECK(in(kN, all[2].legs[4].tension) == Approx(100.0).epsilon(1e-9));
}

TEST_CASE("a leg that does not pull upwards has no limit") {
  HungPiece piece = rectangle(2.0, 2.0, 2.0, does_not_stretch, at_m(0.0, 0.0, -0.4), 100.0 * kN);
  piece.legs.push_back({"A5", at_m(0.0, 0.0, 2.0), 1.0 * m, does_not_stretch});  // above the hook at 1.414 m
  CHECK(why_not(demands::basic_distributions(piece, hung(piece))) ==
        "the leg to A5 does not pull upwards, so statics sets no limit to its tension");
}

TEST_CASE("the pose must be of the same piece") {
  const HungPiece piece = rectangle(2.0, 2.0, 2.0, does_not_stretch, at_m(0.0, 0.0, -0.4), 100.0 * kN);
  Hanging other = hung(piece);
  other.legs.pop_back();
  CHECK(why_not(demands::basic_distributions(piece, other)) == "the hanging pose is of another piece");
  Hanging broken = hung(piece);
  broken.up.z = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(is_assessed(demands::basic_distributions(piece, broken)));
}

// Pulls along one line share nothing with each other, and a vertical load needs pulls on both sides of the hook.
TEST_CASE("legs in one direction are no pair, and a pose that no set of legs holds has no sharing") {
  HungPiece piece;
  piece.legs = {{"A1", at_m(-1.0, 0.0, 0.0), 2.0 * m, does_not_stretch},
                {"A2", at_m(-0.5, 0.0, 1.0), 1.0 * m, does_not_stretch},
                {"A3", at_m(1.0, 0.0, 0.0), 2.0 * m, does_not_stretch}};
  piece.loads = {{at_m(0.0, 0.0, -0.5), 10.0 * kN}};
  Hanging hanging;
  hanging.hook = at_m(0.0, 0.0, 2.0);  // A1 and A2 pull along one line
  hanging.up = {0.0, 0.0, 1.0};
  hanging.legs.resize(3);
  const auto all = assessed(demands::basic_distributions(piece, hanging));
  REQUIRE(all.size() == 2);
  CHECK(all[0].name == "legs A1 and A3 only");
  CHECK(all[1].name == "legs A2 and A3 only");
  for (const auto& sharing : all) CHECK(in(kN, sharing.legs[2].tension) == Approx(5.0 * std::sqrt(5.0) / 2.0));
  hanging.hook = at_m(1.5, 0.0, 2.0);  // beside them all
  CHECK(why_not(demands::basic_distributions(piece, hanging)) == "no set of legs carries the load in this pose");
}
