// Strips of a wall or slab under the pull of an insert, by hand: t = 0.2 m, k_w = 2.5, k_e = 0.5, k_c = 1.5, 15 thicknesses.

#include "demands/wall_strip.hpp"

#include <limits>
#include <string>

#include <catch2/catch.hpp>

#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

// Pull of 20 kN in the middle of 1.8 m clear: a = 1.0, l = 2.0.
WallStrip between() {
  return {.thickness = 0.2 * m, .to_support = 0.9 * m, .to_other = 0.9 * m, .across = 20.0 * kN, .spread = 2.5,
          .spread_end = 0.5, .widest = 15.0};
}
WallStrip jutting_out() {
  return {.thickness = 0.2 * m, .to_support = 0.6 * m, .across = 20.0 * kN, .spread = 1.5, .widest = 15.0};
}

double moment_kNm(const WallStripState& state) { return in(kN * m, state.moment); }

}  // namespace

TEST_CASE("strip between two supports: F a b / l on t + 2.5 a b / l") {
  const auto state = assessed(wall_strip_state(between()));
  CHECK_FALSE(state.at_support);
  CHECK(in(m, state.span) == Approx(2.0));
  CHECK(moment_kNm(state) == Approx(10.0));
  CHECK(in(m, state.width) == Approx(0.2 + 2.5 * 0.5));
  CHECK(in(MPa, state.tension) == Approx(6.0 * 10.0 / (1.45 * 0.04) / 1000.0));
}

TEST_CASE("strip near a support: it holds the strip fast there") {
  WallStrip strip = between();
  strip.to_support = 0.2 * m, strip.to_other = 1.6 * m;
  const auto state = assessed(wall_strip_state(strip));
  CHECK(state.at_support);
  // a = 0.2, l = 1.8: 20 x 0.2 (1.6/1.8)^2 = 3.160 kN m on 0.2 + 0.5 x 0.2 (2 - 0.111) = 0.3889 m.
  CHECK(moment_kNm(state) == Approx(3.1605).margin(0.0001));
  CHECK(in(m, state.width) == Approx(0.38889).margin(0.00001));
}

TEST_CASE("strip that juts out: F a on t + 1.5 a") {
  const auto state = assessed(wall_strip_state(jutting_out()));
  CHECK(moment_kNm(state) == Approx(12.0));
  CHECK(in(m, state.width) == Approx(1.1));
}

TEST_CASE("the pull along the strip adds its moment and its tension") {
  WallStrip strip = between();
  strip.along = 8.0 * kN, strip.arm = 0.1 * m;
  const auto state = assessed(wall_strip_state(strip));
  CHECK(moment_kNm(state) == Approx(10.8));
  CHECK(in(MPa, state.tension) == Approx((6.0 * 10.8 / 0.04 + 8.0 / 0.2) / 1.45 / 1000.0));
}

TEST_CASE("a free edge ends the strip, where it is nearer than half of it") {
  WallStrip strip = between();
  strip.free_edge[1] = 0.3 * m;
  CHECK(in(m, assessed(wall_strip_state(strip)).width) == Approx(0.725 + 0.3));
  strip.free_edge[1] = 0.8 * m;
  CHECK(in(m, assessed(wall_strip_state(strip)).width) == Approx(1.45));
  strip.free_edge = {Length{}, Length{}};
  CHECK_FALSE(why_not(wall_strip_state(strip)).empty());
}

TEST_CASE("no strip is wider than so many thicknesses") {
  WallStrip strip = between();
  strip.widest = 5.0;
  CHECK(in(m, assessed(wall_strip_state(strip)).width) == Approx(1.0));
}

TEST_CASE("other pulls: in the strip, or half way to them, what bends less") {
  WallStrip strip = between();
  strip.others = {{20.0 * kN, 0.5 * m, Length{}}};  // in line, at 0.4 m clear: at the support 20 (0.9/4 + 0.4 (7/9)^2)
  const auto two = assessed(wall_strip_state(strip));
  CHECK(two.at_support);
  CHECK(moment_kNm(two) == Approx(4.5 + 4.8395).margin(0.0001));
  strip.others = {{20.0 * kN, 0.1 * m, Length{}}};  // at 0.8 m clear, 0.9 of 2.0: at the pull
  CHECK(moment_kNm(assessed(wall_strip_state(strip))) == Approx(10.0 + 20.0 * 0.9 * 1.0 / 2.0));
  strip.others = {{20.0 * kN, Length{}, 0.6 * m}};
  const auto aside = assessed(wall_strip_state(strip));
  CHECK(moment_kNm(aside) == Approx(10.0));
  CHECK(in(m, aside.width) == Approx(0.725 + 0.3));
  strip.others = {{2.0 * kN, Length{}, 0.6 * m}};  // a small one is better counted
  CHECK(moment_kNm(assessed(wall_strip_state(strip))) == Approx(11.0));
  strip.others = {{20.0 * kN, Length{}, 5.0 * m}};  // far away it is nothing
  CHECK(in(m, assessed(wall_strip_state(strip)).width) == Approx(1.45));
  strip.others = {{20.0 * kN, Length{}, 0.2 * m}};  // no nearer than a thickness: counted in any case
  CHECK(moment_kNm(assessed(wall_strip_state(strip))) == Approx(20.0));
}

TEST_CASE("a farther pull bends what juts out at its support") {
  WallStrip strip = jutting_out();
  strip.others = {{10.0 * kN, -0.4 * m, Length{}}};  // 1.0 m from it
  CHECK(moment_kNm(assessed(wall_strip_state(strip))) == Approx(12.0 + 10.0));
}

TEST_CASE("strip: numbers that are not usable") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  WallStrip strip = between();
  SECTION("no thickness") { strip.thickness = Length{}; }
  SECTION("a thickness that is no number") { strip.thickness = nan * m; }
  SECTION("a support behind") { strip.to_support = -0.1 * m; }
  SECTION("a pull that is no number") { strip.across = nan * kN; }
  SECTION("a pull the other way") { strip.across = -1.0 * kN; }
  SECTION("an edge that is no number") { strip.free_edge[0] = nan * m; }
  SECTION("another pull that is no number") { strip.others = {{1.0 * kN, nan * m, Length{}}}; }
  SECTION("no spread") { strip.spread = 0.0; }
  CHECK_FALSE(why_not(wall_strip_state(strip)).empty());
}

TEST_CASE("strip: each number below nothing, or that is none, is refused, and nothing where nothing may be") {
  const std::string not_usable = "a number of the wall or slab that the insert bends is not usable";
  const auto why = [](auto change) {
    WallStrip strip = between();
    strip.free_edge = {5.0 * m, 5.0 * m};
    strip.others = {{1.0 * kN, 0.5 * m, Length{}}};
    change(strip);
    return why_not(wall_strip_state(strip));
  };
  for (const double bad :
       {-0.1, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    CHECK(why([&](WallStrip& s) { s.thickness = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.to_support = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.to_other = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.across = bad * kN; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.along = bad * kN; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.arm = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.spread = bad; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.spread_end = bad; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.widest = bad; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.free_edge[0] = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.free_edge[1] = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.others[0].across = bad * kN; }) == not_usable);
    if (bad < 0.0) continue;
    CHECK(why([&](WallStrip& s) { s.others[0].along = bad * m; }) == not_usable);
    CHECK(why([&](WallStrip& s) { s.others[0].aside = bad * m; }) == not_usable);
  }
  CHECK(why([](WallStrip& s) { s.thickness = Length{}; }) == not_usable);
  CHECK(why([](WallStrip& s) { s.spread = 0.0; }) == not_usable);
  CHECK(why([](WallStrip& s) { s.widest = 0.0; }) == not_usable);
  CHECK(why([](WallStrip& s) {
          s.free_edge = {Length{}, Length{}};
        }) == "the wall or slab has no width beside the insert that could carry its pull");
  WallStrip none = between();  // nothing pulls, right at a support
  none.across = Force{}, none.to_support = Length{}, none.spread_end = 0.0;
  CHECK(assessed(wall_strip_state(none)).tension == Stress{});
}

// Beyond the pull, 0.4 m from the far support clear: 10 (l - from) a / l with from = 1.5, a = 1.0, l = 2.0.
TEST_CASE("a pull beyond the insert bends the strip by its influence there") {
  WallStrip strip = between();
  strip.others = {{10.0 * kN, -0.5 * m, Length{}}};
  const auto state = assessed(wall_strip_state(strip));
  CHECK_FALSE(state.at_support);
  CHECK(in(kN * m, state.of_others) == Approx(10.0 * 1.0 * (2.0 - 1.5) / 2.0));
  CHECK(moment_kNm(state) == Approx(12.5));
}
