// How equilibrium may share a load over plumb legs from hooks of their own: levers.

#include "demands/tree_distributions.hpp"

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

struct Posed {
  HungPiece piece;
  Hanging hanging;
};

// Plumb legs of 2 m to picks at these places along x, each from its own hook, in the pose as drawn.
Posed on_plumb_legs(const std::vector<double>& at_x_m, const Position& load_at) {
  Posed made;
  made.piece.loads = {{load_at, 10.0 * kN}};
  made.hanging.up = {0.0, 0.0, 1.0};
  for (const double x : at_x_m) {
    made.piece.legs.push_back(
        {"A" + std::to_string(made.piece.legs.size() + 1), at_m(x, 0.0, 0.0), 2.0 * m, does_not_stretch});
    made.piece.legs.back().from_at = at_m(x - at_x_m.front(), 0.0, 0.0);
    made.hanging.spans.push_back({at_m(x, 0.0, 2.0), at_m(x, 0.0, 0.0)});
    made.hanging.legs.emplace_back();
  }
  return made;
}

Outcome<std::vector<demands::Sharing>> shared(const Posed& of) {
  return demands::tree_distributions(of.piece, of.hanging);
}

}  // namespace

TEST_CASE("two plumb legs share by the lever law, and three leave it open between two of them") {
  const auto two = assessed(shared(on_plumb_legs({-1.0, 1.0}, at_m(0.5, 0.0, -0.5))));
  REQUIRE(two.size() == 1);
  CHECK(two[0].name == "all legs");
  CHECK(in(kN, two[0].legs[0].tension) == Approx(2.5));
  CHECK(in(kN, two[0].legs[1].tension) == Approx(7.5));
  const auto three = assessed(shared(on_plumb_legs({-1.0, 0.0, 1.0}, at_m(0.5, 0.0, -0.5))));
  REQUIRE(three.size() == 2);
  for (const auto& sharing : three) {
    const bool inner = sharing.name == "slack to A1";
    CHECK((inner || sharing.name == "slack to A2"));
    CHECK(in(kN, sharing.legs[2].tension) == Approx(inner ? 5.0 : 7.5));
  }
}

TEST_CASE("a pose that is out of balance is carried by no set of legs") {
  const std::string none = "no set of legs carries the load in this pose";
  // 1e-6 of load x size, the longest of 2 m.
  CHECK(is_assessed(shared(on_plumb_legs({-1.0, 1.0}, at_m(0.0, 1.9e-6, -0.5)))));
  CHECK(why_not(shared(on_plumb_legs({-1.0, 1.0}, at_m(0.0, 2.1e-6, -0.5)))) == none);
  CHECK(why_not(shared(on_plumb_legs({-1.0, 1.0}, at_m(1.1, 0.0, -0.5)))) == none);  // beyond both
  CHECK(is_assessed(shared(on_plumb_legs({-1.0, 1.0}, at_m(0.999, 0.0, -0.5)))));
}

TEST_CASE("more ways to share than 20000 are not listed") {
  // All but one of the legs lie to one side of the load: each of them with that one. 200 x 199/2 ways to
  // choose two.
  std::vector<double> at_x_m;
  for (int i = 0; i < 200; ++i) at_x_m.push_back(0.1 * i);
  const Position load_at = at_m(0.05, 0.0, -0.5);
  CHECK(assessed(shared(on_plumb_legs(at_x_m, load_at))).size() == 199);
  at_x_m.push_back(20.0);  // 20100
  CHECK(why_not(shared(on_plumb_legs(at_x_m, load_at))) ==
        "the rigging leaves more ways to share the load open than can be listed");
}

TEST_CASE("a pose of another piece, or one that is not known in numbers, is refused") {
  const std::string other = "the hanging pose is of another piece",
                    unknown = "the hanging pose is not known in numbers";
  const Posed good = on_plumb_legs({-1.0, 1.0}, at_m(0.0, 0.0, -0.5));
  CHECK(is_assessed(shared(good)));
  Posed posed = good;
  posed.hanging.legs.pop_back();
  CHECK(why_not(shared(posed)) == other);
  posed = good;
  posed.hanging.spans.pop_back();
  CHECK(why_not(shared(posed)) == other);
  posed = good;
  posed.hanging.carriers.emplace_back();
  CHECK(why_not(shared(posed)) == other);
  for (const double bad : {std::nan(""), std::numeric_limits<double>::infinity()}) {
    posed = good;
    posed.hanging.spans[1][0].z = bad * m;
    CHECK(why_not(shared(posed)) == unknown);
    posed = good;
    posed.hanging.up.z = bad;
    CHECK(why_not(shared(posed)) == unknown);
  }
  CHECK(why_not(shared(on_plumb_legs(std::vector<double>{}, at_m(0.0, 0.0, -0.5)))) == unknown);
}
