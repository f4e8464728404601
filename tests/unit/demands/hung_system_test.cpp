// A hung piece as bodies and ropes: where the search starts, what may spin, how many bodies it may have.

#include "demands/hung_system.hpp"

#include <cmath>

#include <catch2/catch.hpp>

#include "demands/hung_ropes.hpp"
#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::HungLeg;

namespace {

HungLeg plain(const char* to, const Position& at, double length_m) {
  return {to, at, length_m * m, does_not_stretch};
}

// Hook, sheaves of 1 kN one below the other on links of 1 m, a piece of 10 kN on one more to a pick 0.5 m
// over its load centre.
HungPiece below_sheaves(std::size_t count) {
  HungPiece piece;
  for (std::size_t k = 0; k < count; ++k) {
    piece.carriers.push_back({"sheave " + std::to_string(k + 1), 1.0 * kN, {}, true});
    HungLeg link = plain("sheave", {}, 1.0);
    if (k > 0) link.from_carrier = k - 1;
    link.to_carrier = k;
    piece.legs.push_back(link);
  }
  HungLeg last = plain("A1", at_m(0.0, 0.0, 0.5), 1.0);
  last.from_carrier = count - 1;
  piece.legs.push_back(last);
  piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  return piece;
}

// Legs straight down from two hooks to picks 2 m apart, the second hook where `second` says.
HungPiece on_two_hooks(const Position& first_pick, const Position& second_pick, const Position& second) {
  HungPiece piece;
  piece.legs = {plain("A1", first_pick, 2.0), plain("A2", second_pick, 2.0)};
  piece.legs[1].from_at = second;
  piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  return piece;
}

}  // namespace

TEST_CASE("up to six carriers: each link carries what is below it, all hang plumb") {
  for (std::size_t count = 1; count <= demands::most_carriers; ++count) {
    CAPTURE(count);
    const Hanging hanging = hung(below_sheaves(count));
    for (std::size_t link = 0; link <= count; ++link)
      CHECK(in(kN, hanging.legs[link].tension) == Approx(10.0 + static_cast<double>(count - link)));
    CHECK(in(m, hanging.hook.z) == Approx(0.5 + 1.0 * static_cast<double>(count + 1)));
    CHECK(std::hypot(in(m, hanging.hook.x), in(m, hanging.hook.y)) < 1e-6);
  }
  CHECK(why_not(demands::hang(below_sheaves(demands::most_carriers + 1))) ==
        "the rigging has 7 beams and sheaves, more than the 6 that are computed");
}

TEST_CASE("a beam whose lower legs hang slack carries next to nothing, and is named") {
  // The piece hangs on two legs from the hook; a beam of 1 kN beside, its lower legs far too long.
  HungPiece piece;
  piece.legs = {plain("A1", at_m(-1.0, 0.0, 0.0), 2.0), plain("A2", at_m(1.0, 0.0, 0.0), 2.0),
                plain("beam", at_m(0.0, 0.0, 0.05), 0.5), plain("B1", at_m(-0.5, 0.0, 0.0), 4.0),
                plain("B2", at_m(0.5, 0.0, 0.0), 4.0)};
  piece.carriers = {{"spreader", 1.0 * kN, {}, false}};
  piece.legs[2].to_carrier = 0;
  piece.legs[3].from_carrier = piece.legs[4].from_carrier = 0;
  piece.legs[3].from_at = at_m(-0.5, 0.0, -0.05), piece.legs[4].from_at = at_m(0.5, 0.0, -0.05);
  piece.loads = {{at_m(0.0, 0.0, -0.5), 100.0 * kN}};
  CHECK(why_not(demands::hang(piece)) ==
        "spreader carries next to nothing: its legs hang slack, and it finds no rest");
}

TEST_CASE("legs from two hooks are a tree: apart along x, along y or in height alone") {
  HungPiece piece = on_two_hooks(at_m(-1, 0, 0.5), at_m(1, 0, 0.5), {});
  CHECK_FALSE(demands::is_tree(piece));
  for (const Position& second : {at_m(1e-6, 0, 0), at_m(0, 1e-6, 0), at_m(0, 0, 1e-6)}) {
    piece.legs[1].from_at = second;
    CHECK(demands::is_tree(piece));
  }
}

TEST_CASE("only hooks apart in plan take the free yaw away") {
  const auto yaw_is_free = [](const Position& second) {
    return demands::hung_system<1>(on_two_hooks(at_m(-1, 0, 0.5), at_m(1, 0, 0.5), second))
        .system.yaw_is_free;
  };
  CHECK(yaw_is_free({}));
  CHECK(yaw_is_free(at_m(0, 0, 1)));
  CHECK_FALSE(yaw_is_free(at_m(2, 0, 0)));
  CHECK_FALSE(yaw_is_free(at_m(0, 2, 0)));
}

TEST_CASE("two plumb legs from hooks apart along y, and of a piece with x up, share by the lever law") {
  HungPiece piece = on_two_hooks(at_m(0, -0.5, 0.5), at_m(0, 1.5, 0.5), at_m(0, 2, 0));
  const Hanging hanging = hung(piece);
  CHECK(in(kN, hanging.legs[0].tension) == Approx(7.5));
  CHECK(in(kN, hanging.legs[1].tension) == Approx(2.5));
  CHECK(in(deg, hanging.tilt) == Approx(0.0).margin(1e-6));

  // Drawn with x up: y of the piece lies along x of space.
  for (const double along : {1.0, -1.0}) {
    HungPiece upright = on_two_hooks(at_m(0.5, -0.5, 0), at_m(0.5, 1.5, 0), at_m(2.0 * along, 0, 0));
    upright.upright = {1.0, 0.0, 0.0};
    const auto poses = demands::hung_start<1>(upright, demands::hung_system<1>(upright));
    CHECK(poses[0].axes[0].z == Approx(1.0));
    const double square = dot(poses[0].axes[1], poses[0].axes[1]);
    CHECK(square == Approx(1.0));
    CHECK(dot(poses[0].axes[0], poses[0].axes[1]) == Approx(0.0).margin(1e-12));
  }
}

TEST_CASE("an equalised group of no leg is none") {
  HungPiece piece = rectangle(3.0, 2.0, 3.0, 1000.0 * kN, at_m(0.0, 0.0, -0.5), 100.0 * kN);
  const Hanging plain_legs = hung(piece);
  piece.equalised = {{}};
  CHECK(demands::ropes_of(piece) == std::vector<std::vector<std::size_t>>{{0}, {1}, {2}, {3}});
  for (std::size_t i = 0; i < 4; ++i) CHECK(hung(piece).legs[i].tension == plain_legs.legs[i].tension);
  piece.equalised = {{}, {2, 0}};
  CHECK(demands::ropes_of(piece) == std::vector<std::vector<std::size_t>>{{2, 0}, {1}, {3}});
  CHECK(demands::hung_system<1>(piece).system.rope_count == 3);
}

TEST_CASE("bodies that hang on each other spin as one") {
  HungPiece piece = on_two_hooks(at_m(-1, 0, 0.5), at_m(1, 0, 0.5), at_m(2, 0, 0));
  piece.carriers = {{"one", 1.0 * kN, {}, false}, {"other", 1.0 * kN, {}, false}};
  HungLeg top = plain("one", {}, 1.0), down = plain("other", {}, 1.0), back = plain("one", {}, 1.0);
  top.to_carrier = 0;
  down.from_carrier = 0, down.to_carrier = 1;
  back.from_carrier = 1, back.to_carrier = 0;
  piece.legs.insert(piece.legs.end(), {top, down, back});
  const auto hung = demands::hung_system<3>(piece);
  REQUIRE(hung.system.spin_count == 1);
  CHECK(hung.system.spins[0].turns == std::array{false, true, true});
  piece.legs.pop_back();  // without the leg back up the lower one spins alone as well
  CHECK(demands::hung_system<3>(piece).system.spin_count == 2);
}

TEST_CASE("the start: a hook at the load centre leaves the piece upright, bodies without a leg stay") {
  // The pick as far below the load centre as the start draws its leg.
  HungPiece piece;
  piece.legs = {plain("A1", at_m(0.0, 0.0, -1.01), 1.0)};
  piece.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  const auto upright = demands::hung_start<1>(piece, demands::hung_system<1>(piece));
  CHECK(norm(upright[0].origin) == Approx(0.0).margin(1e-12));
  CHECK(upright[0].axes[2].z == 1.0);

  // A beam on a leg of 1 m that carries nothing; the piece on no leg at all.
  HungPiece beam;
  beam.carriers = {{"beam", 1.0 * kN, {}, false}};
  beam.legs = {plain("beam", at_m(0.0, 0.0, 0.2), 1.0)};
  beam.legs[0].to_carrier = 0;
  beam.loads = {{at_m(0.0, 0.0, 0.0), 10.0 * kN}};
  const auto poses = demands::hung_start<2>(beam, demands::hung_system<2>(beam));
  CHECK(poses[0].origin.z == 0.0);
  CHECK(poses[1].origin.x == 0.0);
  CHECK(poses[1].origin.z == Approx(-1.2));
}
