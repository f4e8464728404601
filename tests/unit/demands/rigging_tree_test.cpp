// Trees by hand: statics of triangles, pulleys and levers.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "demands/length_errors.hpp"
#include "demands/tree_distributions.hpp"
#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

double tension_kN(const Hanging& hanging, std::size_t leg) { return in(kN, hanging.legs.at(leg).tension); }

HungLeg leg(std::string to, Position at, double length_m) {
  return {std::move(to), at, length_m * m, does_not_stretch};
}
HungLeg to_carrier(HungLeg leg, std::size_t carrier) {
  leg.to_carrier = carrier;
  return leg;
}
HungLeg from(HungLeg leg, std::size_t carrier, Position at) {
  leg.from_carrier = carrier;
  leg.from_at = at;
  return leg;
}
HungLeg from_hook(HungLeg leg, Position at) {
  leg.from_at = at;
  return leg;
}

// A spreader of 3 m on two slings of 60 degrees, its pins 0.1 m above and below its middle; the piece on two
// vertical legs, its load centre 0.5 m below the picks and `aside` of their middle.
HungPiece below_a_spreader(double load_kN, double beam_kN, double aside_m) {
  HungPiece piece;
  piece.carriers = {{"spreader", beam_kN * kN, at_m(0, 0, 0), false}};
  piece.legs = {to_carrier(leg("left", at_m(-1.5, 0, 0.1), 3.0), 0),
                to_carrier(leg("right", at_m(1.5, 0, 0.1), 3.0), 0),
                from(leg("A1", at_m(-1.5, 0, 0), 1.2), 0, at_m(-1.5, 0, -0.1)),
                from(leg("A2", at_m(1.5, 0, 0), 1.2), 0, at_m(1.5, 0, -0.1))};
  piece.loads = {{at_m(aside_m, 0, -0.5), load_kN * kN}};
  return piece;
}

}  // namespace

TEST_CASE("spreader: slings W/(2 sin 60), legs W/2, its own weight on the slings alone") {
  const Hanging light = hung(below_a_spreader(100.0, 1e-9, 0.0));
  CHECK(tension_kN(light, 0) == Approx(57.73503).epsilon(1e-7));
  CHECK(tension_kN(light, 2) == Approx(50.0).epsilon(1e-9));
  const Hanging heavy = hung(below_a_spreader(100.0, 8.0, 0.0));
  CHECK(tension_kN(heavy, 1) == Approx(108.0 / std::sqrt(3.0)).epsilon(1e-9));
  CHECK(tension_kN(heavy, 3) == Approx(50.0).epsilon(1e-9));
  CHECK(in(deg, heavy.carriers.at(0).tilt) == Approx(0.0).margin(1e-6));
  CHECK(in(deg, heavy.legs.at(0).angle_from_horizontal) == Approx(60.0).epsilon(1e-9));
  CHECK(in(deg, heavy.legs.at(2).angle_from_horizontal) == Approx(90.0).epsilon(1e-6));
}

// The weightless beam and its slings pass nothing but forces through the hook: the load centre is plumb below.
TEST_CASE("spreader: a load off the middle tilts beam and piece, and the nearer leg carries more") {
  const Hanging hanging = hung(below_a_spreader(100.0, 1e-9, 0.15));
  const Position below = hanging.hook - at_m(0.15, 0, -0.5);
  const Direction plumb{below.x / norm(below), below.y / norm(below), below.z / norm(below)};
  CHECK(norm(cross(plumb, hanging.up)) < 1e-7);
  CHECK(in(deg, hanging.tilt) > 1.0);
  CHECK(tension_kN(hanging, 3) > tension_kN(hanging, 2));
  CHECK(hanging.force_residual < 1e-9);
  CHECK(hanging.moment_residual < 1e-9);
}

TEST_CASE("a sheave on a link: both parts alike, the link carries both and the sheave") {
  HungPiece piece;
  piece.carriers = {{"sheave", 2.0 * kN, {}, true}};
  piece.legs = {to_carrier(leg("sheave", {}, 1.0), 0), from(leg("A1", at_m(-1, 0, 0), 2.0), 0, {}),
                from(leg("A2", at_m(1, 0, 0), 2.0), 0, {})};
  piece.equalised = {{1, 2}};
  piece.loads = {{at_m(0, 0, -2.0), 30.0 * kN}};
  const Hanging hanging = hung(piece);
  CHECK(tension_kN(hanging, 0) == Approx(32.0).epsilon(1e-9));
  CHECK(tension_kN(hanging, 1) == Approx(15.0 / std::sin(M_PI / 3.0)).epsilon(1e-9));
  CHECK(tension_kN(hanging, 1) == tension_kN(hanging, 2));
}

TEST_CASE("a sheave below a sheave: each part carries half of the one above") {
  HungPiece piece;  // a deep load below four picks in a line
  piece.carriers = {{"top", 1e-9 * kN, {}, true}, {"left", 1e-9 * kN, {}, true}, {"right", 1e-9 * kN, {}, true}};
  piece.legs = {to_carrier(leg("top", {}, 1.0), 0),
                to_carrier(from(leg("left", {}, 2.0), 0, {}), 1),
                to_carrier(from(leg("right", {}, 2.0), 0, {}), 2),
                from(leg("A1", at_m(-1.5, 0, 0), 1.5), 1, {}),
                from(leg("A2", at_m(-0.5, 0, 0), 1.5), 1, {}),
                from(leg("A3", at_m(0.5, 0, 0), 1.5), 2, {}),
                from(leg("A4", at_m(1.5, 0, 0), 1.5), 2, {})};
  piece.equalised = {{1, 2}, {3, 4}, {5, 6}};
  piece.loads = {{at_m(0, 0, -3.0), 40.0 * kN}};
  const Hanging hanging = hung(piece);
  CHECK(tension_kN(hanging, 1) == tension_kN(hanging, 2));
  CHECK(tension_kN(hanging, 3) == Approx(tension_kN(hanging, 5)).epsilon(1e-9));
  Force vertical{};
  for (std::size_t i = 3; i < 7; ++i)
    vertical += hanging.legs[i].tension * std::sin(in(radian, hanging.legs[i].angle_from_horizontal));
  CHECK(in(kN, vertical) == Approx(40.0).epsilon(1e-9));
}

// Shares of a lever: W d2/(d1 + d2).
TEST_CASE("two hooks straight above two picks share as a lever does") {
  HungPiece piece;
  piece.legs = {from_hook(leg("A1", at_m(-1.0, 0, 0), 3.0), at_m(0, 0, 0)),
                from_hook(leg("A2", at_m(2.0, 0, 0), 3.0), at_m(3.0, 0, 0))};
  piece.loads = {{at_m(0.0, 0.0, -0.5), 30.0 * kN}};
  const Hanging hanging = hung(piece);
  CHECK(tension_kN(hanging, 0) == Approx(20.0).epsilon(1e-9));
  CHECK(tension_kN(hanging, 1) == Approx(10.0).epsilon(1e-9));
  CHECK(in(deg, hanging.tilt) == Approx(0.0).margin(1e-6));
  CHECK(assessed(basic_distributions(piece, hanging)).size() == 1);
}

TEST_CASE("the general list of what equilibrium allows is that of one hook") {
  for (const int legs : {3, 4, 5, 6}) {
    const HungPiece piece = circle(legs, 1.5, 3.0, does_not_stretch, at_m(0.1, 0.05, -0.5), 90.0 * kN);
    const Hanging hanging = hung(piece);
    const auto one_hook = assessed(basic_distributions(piece, hanging));
    const auto general = assessed(tree_distributions(piece, hanging));
    CAPTURE(legs);
    CHECK(general.size() == one_hook.size());
    for (std::size_t leg = 0; leg < piece.legs.size(); ++leg) {
      const auto most = [&](const std::vector<Sharing>& all) {
        double kilonewton = 0.0;
        for (const Sharing& sharing : all) kilonewton = std::max(kilonewton, in(kN, sharing.legs[leg].tension));
        return kilonewton;
      };
      CHECK(most(general) == Approx(most(one_hook)).epsilon(1e-6));
    }
  }
}

// A frame of four slings and four vertical legs, load in the middle: above and below the worst is two legs.
TEST_CASE("a stiff frame: two of four carry all, above as below") {
  HungPiece piece;
  piece.carriers = {{"frame", 1e-6 * kN, {}, false}};
  for (const auto& [x, y] : {std::pair{1.0, 1.0}, {-1.0, 1.0}, {-1.0, -1.0}, {1.0, -1.0}}) {
    piece.legs.push_back(to_carrier(leg("frame", at_m(x, y, 0.1), 2.0), 0));
    piece.legs.push_back(from(leg("A", at_m(x, y, 0.0), 1.0), 0, at_m(x, y, -0.1)));
  }
  piece.loads = {{at_m(0, 0, -0.5), 80.0 * kN}};
  const Hanging hanging = hung(piece);
  CHECK(tension_kN(hanging, 0) == Approx(20.0 * std::sqrt(2.0)).epsilon(1e-6));
  CHECK(tension_kN(hanging, 1) == Approx(20.0).epsilon(1e-6));
  double above = 0.0, below = 0.0;
  for (const Sharing& sharing : assessed(basic_distributions(piece, hanging))) {
    above = std::max(above, in(kN, sharing.legs[0].tension));
    below = std::max(below, in(kN, sharing.legs[1].tension));
  }
  CHECK(above == Approx(40.0 * std::sqrt(2.0)).epsilon(1e-6));
  CHECK(below == Approx(40.0).epsilon(1e-6));
}

// S5 of the closed forms: T = T0 +- k Delta / 4 with k = EA/L; legs 3 m, EA 25120 kN. All four off by 0.05 %:
// Delta = 4 x 1.5 mm on one diagonal pair short, the other long.
TEST_CASE("errors of length: the worst of all combinations is the pair of diagonals") {
  const HungPiece piece = rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0, 0, -0.5), 100.0 * kN);
  const auto all = assessed(length_errors(piece, Ratio{0.0005}));
  CHECK(all.size() == 14);
  double most = 0.0;
  for (const Sharing& sharing : all) most = std::max(most, in(kN, sharing.legs[0].tension));
  CHECK(most == Approx(31.277 + 8373.33 * 0.006 / 4.0).epsilon(2e-3));
  CHECK(assessed(length_errors(piece, Ratio{0.0})).empty());
  CHECK_FALSE(is_assessed(length_errors(piece, Ratio{1.0})));
  CHECK_FALSE(is_assessed(length_errors(piece, Ratio{std::numeric_limits<double>::quiet_NaN()})));
  CHECK_FALSE(is_assessed(
      length_errors(circle(9, 1.5, 3.0, does_not_stretch, at_m(0, 0, -0.5), 90.0 * kN), Ratio{0.001})));
}

TEST_CASE("what cannot be a tree is refused") {
  HungPiece piece = below_a_spreader(100.0, 5.0, 0.0);
  piece.carriers[0].weight = std::numeric_limits<double>::quiet_NaN() * kN;
  CHECK_FALSE(is_assessed(hang(piece)));
  piece = below_a_spreader(100.0, 5.0, 0.0);
  piece.legs.resize(2);
  CHECK(why_not(hang(piece)) == "spreader carries nothing");
  piece = below_a_spreader(100.0, 5.0, 0.0);
  piece.legs.erase(piece.legs.begin(), piece.legs.begin() + 2);
  CHECK(why_not(hang(piece)) == "spreader hangs on nothing");
  piece = below_a_spreader(100.0, 5.0, 0.0);
  piece.legs[0].to_carrier = 3;
  CHECK_FALSE(is_assessed(hang(piece)));
  piece = below_a_spreader(100.0, 5.0, 0.0);
  piece.carriers.resize(7, piece.carriers[0]);
  CHECK(why_not(hang(piece)) == "the rigging has 7 beams and sheaves, more than the 6 that are computed");
}

// Slings to the lower edge of a heavy beam, its centre of gravity above them: it turns over.
TEST_CASE("a beam that is top-heavy does not stay level") {
  HungPiece piece = below_a_spreader(10.0, 50.0, 0.0);
  piece.carriers[0].centre = at_m(0, 0, 3.0);
  const auto hanging = hang(piece);
  if (const auto* found = std::get_if<Hanging>(&hanging)) CHECK(in(deg, found->carriers.at(0).tilt) > 5.0);
  else CHECK_FALSE(std::get<NotAssessed>(hanging).why.empty());
}
