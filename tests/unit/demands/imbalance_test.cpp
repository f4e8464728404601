#include "demands/imbalance.hpp"

#include <catch2/catch.hpp>

#include <limits>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::Imbalance;
using demands::imbalance;

namespace {

// Two legs at 60 degrees, 1 m long, 10 kN, by hand.
struct ByHand {
  HungPiece piece;
  Hanging hanging;
};
ByHand by_hand() {
  const double height = std::sqrt(3.0) / 2.0, tension_kN = 10.0 / std::sqrt(3.0);
  ByHand b;
  b.piece.legs = {{"A1", at_m(-0.5, 0.0, 0.0), 1.0 * m, does_not_stretch},
                  {"A2", at_m(0.5, 0.0, 0.0), 1.0 * m, does_not_stretch}};
  b.piece.loads = {{at_m(0.0, 0.0, -0.5), 10.0 * kN}};
  b.hanging.hook = at_m(0.0, 0.0, height);
  b.hanging.up = {0.0, 0.0, 1.0};
  for (const double side : {1.0, -1.0})
    b.hanging.legs.push_back(
        {tension_kN * kN, 60.0 * deg, {side * 0.5 * tension_kN * kN, Force{}, 5.0 * kN}});
  for (const auto& leg : b.piece.legs) b.hanging.spans.push_back({b.hanging.hook, leg.at});
  return b;
}

}  // namespace

TEST_CASE("load centre: place by weight, total, size") {
  HungPiece piece = by_hand().piece;
  piece.loads = {{at_m(0.0, 0.0, 0.0), 30.0 * kN}, {at_m(4.0, 0.0, -2.0), 10.0 * kN}};
  const auto centre = demands::load_centre(piece);
  CHECK(in(m, centre.at.x) == Approx(1.0));
  CHECK(in(m, centre.at.z) == Approx(-0.5));
  CHECK(in(kN, centre.total) == Approx(40.0));
  CHECK(in(m, centre.size) == Approx(std::hypot(1.5, 0.5)));
}

TEST_CASE("what balances leaves nothing") {
  const ByHand b = by_hand();
  const Imbalance left = imbalance(b.piece, b.hanging);
  CHECK(left.force < 1e-15);
  CHECK(left.moment < 1e-15);
  CHECK(left.length < 1e-15);
  CHECK_FALSE(left.a_leg_pushes);
}

TEST_CASE("a force too much is seen in its size") {
  ByHand b = by_hand();
  b.hanging.legs[0].on_insert.z += 0.1 * kN;
  const Imbalance left = imbalance(b.piece, b.hanging);
  CHECK(left.force == Approx(0.01));
  CHECK(left.moment == Approx(0.005));  // 0.1 kN at 0.5 m, over 10 kN x 1 m
}

TEST_CASE("a load off the plumb line is seen as a moment") {
  ByHand b = by_hand();
  b.piece.loads[0].at.y = 0.02 * m;
  const Imbalance left = imbalance(b.piece, b.hanging);
  CHECK(left.force < 1e-15);
  CHECK(left.moment == Approx(0.02).epsilon(1e-3));
}

TEST_CASE("lengths: a taut leg too long or short, a slack one too long") {
  ByHand b = by_hand();
  b.piece.legs[0].length = 1.001 * m;
  CHECK(imbalance(b.piece, b.hanging).length == Approx(0.001).epsilon(2e-3));
  b.piece.legs[0].length = 0.999 * m;
  CHECK(imbalance(b.piece, b.hanging).length == Approx(0.001).epsilon(2e-3));
  b.hanging.legs[0].tension = Force{};
  CHECK(imbalance(b.piece, b.hanging).length == Approx(0.001).epsilon(2e-3));
  b.piece.legs[0].length = 1.5 * m;
  CHECK(imbalance(b.piece, b.hanging).length < 1e-15);

  ByHand stretched = by_hand();  // 10/sqrt(3) kN on 1000 kN
  stretched.piece.legs[0].axial_stiffness = 1000.0 * kN;
  CHECK(imbalance(stretched.piece, stretched.hanging).length == Approx(0.01 / std::sqrt(3.0)));
}

TEST_CASE("an equalised rope is measured as a whole") {
  ByHand b = by_hand();
  b.piece.equalised = {{0, 1}};
  b.piece.legs[0].length = 1.3 * m;
  b.piece.legs[1].length = 0.7 * m;
  CHECK(imbalance(b.piece, b.hanging).length < 1e-15);
  b.piece.legs[1].length = 0.72 * m;
  CHECK(imbalance(b.piece, b.hanging).length == Approx(0.02).epsilon(0.4));  // over a size of 1.3
}

TEST_CASE("a leg that pushes and what is not a number are seen") {
  ByHand pushed = by_hand();
  pushed.hanging.legs[1].tension = -1.0 * newton;
  CHECK(imbalance(pushed.piece, pushed.hanging).a_leg_pushes);

  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  ByHand b = by_hand();
  b.hanging.spans[0][0].x = not_a_number * m;
  CHECK_FALSE(imbalance(b.piece, b.hanging).length <= 1.0);
  b = by_hand();
  b.hanging.legs[0].tension = not_a_number * kN;
  CHECK(imbalance(b.piece, b.hanging).a_leg_pushes);
  b = by_hand();
  b.hanging.up.z = not_a_number;
  CHECK_FALSE(imbalance(b.piece, b.hanging).force <= 1.0);
}

TEST_CASE("balanced is to 1e-9 of load, of load times size and of the size, and no leg pushes") {
  using demands::Imbalance;
  CHECK(demands::is_balanced({}));
  CHECK(demands::is_balanced({1e-9, 1e-9, 1e-9, false}));
  for (const double bad : {1.01e-9, 1.0, std::nan(""), double{INFINITY}}) {
    CHECK_FALSE(demands::is_balanced({.force = bad}));
    CHECK_FALSE(demands::is_balanced({.moment = bad}));
    CHECK_FALSE(demands::is_balanced({.length = bad}));
  }
  CHECK_FALSE(demands::is_balanced({.a_leg_pushes = true}));
}
