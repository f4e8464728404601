// Four legs that statics alone does not share: a diagonal pair too short, and pairs over sheaves, in closed form to 1e-9.
//
// Sources  geometry and equilibrium, no outside number. A rectangle 2a x 2b hung at its middle, opposite legs alike: it
//          cannot tilt, all legs reach the same l = sqrt(a^2 + b^2 + H^2), and one equation gives the height of the hook,
//
//            2 [<E A (l/L13 - 1)> + <E A (l/L24 - 1)>] H/l = W        <x> = x, or 0 where x < 0
//
//          found here by halving to the last bit. Two ropes over sheaves at the hook, alike on both sides of the middle: each
//          holds as one leg of h = sqrt(L^2 - a^2) at the middle of its two inserts would; the triangle of these two and the
//          2b between them has the hook at its top, the load centre comes plumb below it, and
//
//            F1 d1 + F2 d2 = W (along the plumb line),   T = F L/(2 h)
//
//          A link joins legs and does not roll: below it two legs as from a hook, T1 = W D2 L1/(D2 H1 + D1 H2), above it all.
//
// Computed rigging-statics

#include <catch2/catch.hpp>

#include <cmath>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct TwoDiagonals {
  double first_kN = 0.0, second_kN = 0.0;  // tension of each leg of a diagonal
};

TwoDiagonals by_halving(double a_m, double b_m, double first_m, double second_m, double stiffness_kN, double weight_kN) {
  const double flat_m2 = a_m * a_m + b_m * b_m;
  const auto at = [&](double high_m) {
    const double l = std::sqrt(flat_m2 + high_m * high_m);
    return TwoDiagonals{std::max(0.0, stiffness_kN * (l / first_m - 1.0)), std::max(0.0, stiffness_kN * (l / second_m - 1.0))};
  };
  const auto up_kN = [&](double high_m) {
    const TwoDiagonals t = at(high_m);
    return 2.0 * (t.first_kN + t.second_kN) * high_m / std::sqrt(flat_m2 + high_m * high_m);
  };
  double low = 0.0, high = 100.0;
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    (up_kN(middle) < weight_kN ? low : high) = middle;
  }
  return at(low);
}

// Opposite corners.
void shorten_a_diagonal(HungPiece& piece, double by_mm) {
  piece.legs[0].length -= by_mm * mm;
  piece.legs[2].length -= by_mm * mm;
}

}  // namespace

TEST_CASE("one diagonal too short, from even to slack: exact to 1e-9") {
  constexpr double stiffness_kN = 25120.0, weight_kN = 100.0;
  for (const double short_mm : {0.0, 0.1, 1.0, 2.5, 5.0, 7.0, 7.4, 8.0, 15.0, 30.0}) {
    CAPTURE(short_mm);
    HungPiece piece = rectangle(3.0, 2.0, 3.0, stiffness_kN * kN, at_m(0.0, 0.0, -0.5), weight_kN * kN);
    shorten_a_diagonal(piece, short_mm);
    const Hanging hanging = hung(piece);
    const TwoDiagonals exact = by_halving(1.5, 1.0, 3.0 - 1e-3 * short_mm, 3.0, stiffness_kN, weight_kN);
    for (const std::size_t leg : {0u, 2u})
      CHECK(in(kN, hanging.legs[leg].tension) == Approx(exact.first_kN).epsilon(1e-9));
    for (const std::size_t leg : {1u, 3u})
      CHECK(in(kN, hanging.legs[leg].tension) == Approx(exact.second_kN).epsilon(1e-9).margin(1e-9));
    CHECK(in(deg, hanging.tilt) < 1e-7);
  }
}

TEST_CASE("the closed form itself: a quarter each without error, half on each of two when the others are slack") {
  const double sine_of = std::sqrt(9.0 - 3.25) / 3.0;
  const TwoDiagonals stiff = by_halving(1.5, 1.0, 3.0, 3.0, 1e9, 100.0);
  CHECK(stiff.first_kN == Approx(25.0 / sine_of).epsilon(1e-6));
  const TwoDiagonals slack = by_halving(1.5, 1.0, 2.9, 3.0, 1e9, 100.0);
  CHECK(slack.second_kN == 0.0);
  CHECK(slack.first_kN == Approx(50.0 * 2.9 / std::sqrt(2.9 * 2.9 - 3.25)).epsilon(1e-6));
}

TEST_CASE("two ropes over sheaves at the hook, unlike in length, load off the middle: exact to 1e-9") {
  struct Row {
    double first_m, second_m, off_m;  // length of each leg of the two pairs; of the load centre, towards the first
  };
  for (const auto& [first_m, second_m, off_m] : {Row{3.0, 3.0, 0.0}, Row{3.0, 3.0, 0.2}, Row{2.8, 3.1, 0.0}, Row{2.8, 3.1, -0.3}}) {
    CAPTURE(first_m, second_m, off_m);
    constexpr double a_m = 1.5, b_m = 1.0, below_m = 1.5, weight_kN = 100.0;  // deep enough not to run along the ropes
    HungPiece piece = rectangle(2.0 * a_m, 2.0 * b_m, first_m, does_not_stretch, at_m(0.0, off_m, -below_m), weight_kN * kN);
    piece.legs[2].length = piece.legs[3].length = second_m * m;
    piece.equalised = {{0, 1}, {2, 3}};
    const Hanging hanging = hung(piece);

    const double h1 = std::sqrt(first_m * first_m - a_m * a_m), h2 = std::sqrt(second_m * second_m - a_m * a_m);
    const double y = (h2 * h2 - h1 * h1) / (4.0 * b_m), z = std::sqrt(h1 * h1 - (y - b_m) * (y - b_m));  // of the hook
    const double down_y = off_m - y, down_z = -below_m - z, plumb = std::hypot(down_y, down_z);
    // Both forces on the hook and the weight: W plumb = -(F1 e1 + F2 e2), e from the hook to the middle of a pair.
    const double e1y = (b_m - y) / h1, e1z = -z / h1, e2y = (-b_m - y) / h2, e2z = -z / h2;
    const double wy = weight_kN * down_y / plumb, wz = weight_kN * down_z / plumb;
    const double det = e1y * e2z - e2y * e1z;
    const double f1 = (wy * e2z - e2y * wz) / det, f2 = (e1y * wz - wy * e1z) / det;
    for (const std::size_t leg : {0u, 1u})
      CHECK(in(kN, hanging.legs[leg].tension) == Approx(0.5 * f1 * first_m / h1).epsilon(1e-9));
    for (const std::size_t leg : {2u, 3u})
      CHECK(in(kN, hanging.legs[leg].tension) == Approx(0.5 * f2 * second_m / h2).epsilon(1e-9));
    CHECK(hanging.tilt.value() == Approx(std::abs(std::atan2(down_y, -down_z))).epsilon(1e-9).margin(1e-9));
  }
}

TEST_CASE("a link below the hook: two legs of different length as from a hook of their own, all of it above") {
  constexpr double weight_kN = 60.0, link_kN = 0.5;
  HungPiece piece;
  piece.carriers = {{"ring", link_kN * kN, {}, true}};
  // The hook over the load centre, the link 0.8 m below it, picks 1.0 m and 2.0 m aside and 1.5 m below the link.
  const double l1 = std::hypot(1.0, 1.5), l2 = std::hypot(2.0, 1.5);
  demands::HungLeg top{"ring", {}, 0.8 * m, does_not_stretch}, one{"A1", at_m(-1.0, 0.0, 0.0), l1 * m, does_not_stretch},
      two{"A2", at_m(2.0, 0.0, 0.0), l2 * m, does_not_stretch};
  top.to_carrier = 0, one.from_carrier = 0, two.from_carrier = 0;
  piece.legs = {top, one, two};
  piece.loads = {{at_m(0.0, 0.0, -0.4), weight_kN * kN}};
  const Hanging hanging = hung(piece);
  CHECK(in(kN, hanging.legs[0].tension) == Approx(weight_kN + link_kN).epsilon(1e-9));
  CHECK(in(kN, hanging.legs[1].tension) == Approx(weight_kN * 2.0 * l1 / (3.0 * 1.5)).epsilon(1e-9));
  CHECK(in(kN, hanging.legs[2].tension) == Approx(weight_kN * 1.0 * l2 / (3.0 * 1.5)).epsilon(1e-9));
  CHECK(in(deg, hanging.tilt) < 1e-7);
}
