// Statically indeterminate riggings against CalculiX (2.20 where this was written), an independent finite element program,
// with large displacements. It is run by the test; where `ccx` is not installed the cases say so and compare nothing.
//
// Tolerance: 0.5 % of each leg's tension; of a slack leg 0.05 % of the load.
//
// Outside  rigging-statics

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "support/calculix_plate.hpp"
#include "support/calculix_tree.hpp"
#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

void compare(const HungPiece& piece, std::size_t slack_legs = 0) {
  const Hanging ours = hung(piece);
  const double load_kN = in(kN, total_of(piece));
  const auto is_slack = [&](const demands::LegForce& leg) { return in(kN, leg.tension) < 1e-3 * load_kN; };
  CHECK(static_cast<std::size_t>(std::ranges::count_if(ours.legs, is_slack)) == slack_legs);
  if (!calculix_is_installed()) {
    WARN("CalculiX (ccx) is not installed: nothing was compared");
    return;
  }
  const auto theirs = calculix_tensions(piece, ours);
  REQUIRE(theirs);
  REQUIRE(theirs->size() == piece.legs.size());
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const double ours_kN = in(kN, ours.legs[i].tension), theirs_kN = in(kN, (*theirs)[i]);
    CAPTURE(i, piece.legs[i].to, ours_kN, theirs_kN);
    // Not in the form that the record of docs/verification.md copies: their digits are those of the machine.
    CHECK(std::abs(ours_kN - theirs_kN) <= std::max(0.005 * theirs_kN, 0.0005 * load_kN));
  }
}

// Leg to `at` of the piece from a hook at `hook`, drawn there, as long as drawn but for `longer`.
demands::HungLeg leg_from(const Position& hook, const Position& first_hook, const Position& at, Force axial_stiffness,
                          Length longer = Length{}) {
  return {"A", at, norm(at - hook) + longer, axial_stiffness, {}, hook - first_hook, {}};
}

// A frame of 2.0 x 1.2 m on four legs below the hook, 3 m of height between; below each corner a leg of 1.5 m.
HungPiece below_a_frame(Length last_longer) {
  HungPiece piece;
  const Length drop = 1.5 * m;
  for (const double x : {-1.0, 1.0})
    for (const double y : {-0.6, 0.6}) {
      const Position corner = at_m(x, y, 0.0);
      piece.legs.push_back({"frame", corner, norm(at_m(x, y, -3.0)), 40000.0 * kN, {}, {}, 0});
    }
  for (const double x : {-1.0, 1.0})
    for (const double y : {-0.6, 0.6})
      piece.legs.push_back({"A", at_m(1.1 * x, 1.1 * y, 0.0), drop, 15000.0 * kN, 0, at_m(x, y, -0.1), {}});
  piece.legs.back().length += last_longer;
  piece.carriers = {{"frame", 5.0 * kN, at_m(0.05, 0.0, -0.05), false}};
  piece.loads = {{at_m(0.1, -0.05, -0.6), 80.0 * kN}};
  return piece;
}

}  // namespace

TEST_CASE("CalculiX: four wire ropes on a rectangle, the load off the middle", "[calculix]") {
  compare(rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0.2, 0.1, -0.5), 100.0 * kN));
}

TEST_CASE("CalculiX: four wire ropes, one 5 mm short", "[calculix]") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0.2, 0.1, -0.5), 100.0 * kN);
  piece.legs[0].length -= 5.0 * mm;
  compare(piece);
}

TEST_CASE("CalculiX: four wire ropes, one 40 mm long and slack", "[calculix]") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0.2, 0.1, -0.5), 100.0 * kN);
  piece.legs[2].length += 40.0 * mm;
  compare(piece, 1);
}

TEST_CASE("CalculiX: six chains on a ring, the load off the middle", "[calculix]") {
  compare(circle(6, 1.5, 3.0, 18000.0 * kN, at_m(0.12, -0.2, -0.4), 120.0 * kN));
}

TEST_CASE("CalculiX: eight picks of a long panel, inner legs twice as stiff as outer ones", "[calculix]") {
  HungPiece piece;
  const Position hook = at_m(0.0, 0.0, 4.0);
  for (const double x : {-2.4, -0.8, 0.8, 2.4})
    for (const double y : {-0.8, 0.8})
      piece.legs.push_back(leg_from(hook, hook, at_m(x, y, 0.0), (std::abs(x) < 1.0 ? 60000.0 : 30000.0) * kN));
  piece.loads = {{at_m(0.1, 0.05, -0.1), 150.0 * kN}};
  compare(piece);
}

TEST_CASE("CalculiX: a frame on four legs, four legs below it, the load off the middle", "[calculix]") { compare(below_a_frame(Length{})); }

TEST_CASE("CalculiX: the same with one leg below the frame 3 mm long", "[calculix]") { compare(below_a_frame(3.0 * mm)); }

TEST_CASE("CalculiX: two hooks with four legs each, one leg 2 mm long", "[calculix]") {
  HungPiece piece;
  const Position first = at_m(-2.0, 0.0, 3.0), second = at_m(2.0, 0.0, 3.0);
  for (const Position& hook : {first, second})
    for (const double x : {-0.9, 0.9})
      for (const double y : {-0.7, 0.7})
        piece.legs.push_back(leg_from(hook, first, at_m(in(m, hook.x) + x, y, 0.0), 20000.0 * kN));
  piece.legs[5].length += 2.0 * mm;
  piece.loads = {{at_m(0.3, 0.1, -0.3), 200.0 * kN}};
  compare(piece);
}
