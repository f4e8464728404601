// 29 CFR 1926.704(c): inserts in precast members other than tilt-up carry at least four times the maximum
// intended load applied or transmitted to them (text read). The factor 4 is the regulation's.
//
// The piece: a box culvert 8 x 6 x 6 ft of 19,200 lb on four picks, legs at 60 degrees from horizontal. Its
// numbers were worked by hand from statics before this program existed; they are no publication. Tolerance:
// half a pound.
//
// Outside  tables/rules/us.toml
// Computed rigging-statics

#include <catch2/catch.hpp>

#include <cmath>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr double factor_of_the_regulation = 4.0;

// Picks 6 x 4 ft apart on the top; legs twice as long as their reach from the middle: 60 degrees.
HungPiece culvert() {
  HungPiece piece = rectangle(1.0, 1.0, 1.0, does_not_stretch, at_m(0.0, 0.0, 0.0), 19200.0 * lbf);
  for (auto& leg : piece.legs) {
    leg.at.x *= 6.0 * 0.3048;
    leg.at.y *= 4.0 * 0.3048;
    leg.length = 2.0 * std::hypot(3.0, 2.0) * ft;
  }
  piece.loads[0].at.z = -3.5 * ft;
  return piece;
}

}  // namespace

TEST_CASE("four legs share alike") {
  const Hanging hanging = hung(culvert());
  for (const auto& leg : hanging.legs) {
    CHECK(in(deg, leg.angle_from_horizontal) == Approx(60.0).margin(1e-9));
    CHECK(in(lbf, leg.on_insert.z) == Approx(4800).margin(0.5));
    CHECK(in(lbf, leg.tension) == Approx(5543).margin(0.5));
    CHECK(factor_of_the_regulation * in(lbf, leg.tension) == Approx(22170).margin(0.5));
  }
}

TEST_CASE("two legs carry all") {
  const HungPiece piece = culvert();
  const auto sharings = assessed(demands::basic_distributions(piece, hung(piece)));
  REQUIRE(sharings.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    const auto& leg = sharings[i].legs[i];
    CHECK(in(lbf, leg.on_insert.z) == Approx(9600).margin(0.5));
    CHECK(in(lbf, leg.tension) == Approx(11085).margin(0.5));
    CHECK(factor_of_the_regulation * in(lbf, leg.tension) == Approx(44341).margin(0.51));  // 44,340.5
  }
}
