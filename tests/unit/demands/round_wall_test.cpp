// A round wall as a ring, each pull held by shear round it: equilibrium and limits. Closed forms: tests/verification.

#include "demands/round_wall.hpp"

#include <cmath>
#include <limits>
#include <string>

#include <catch2/catch.hpp>

#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

RoundBand band(std::vector<RoundPull> pulls) {
  return {.inside = 0.95 * m, .outside = 1.05 * m, .height = 0.5 * m, .pulls = std::move(pulls)};
}

}  // namespace

TEST_CASE("round wall: what it weighs is the moment of the thin ring, on a curved beam, with its axial force") {
  const auto state = assessed(round_state(band({{Angle{}, 10.0 * kN, {}}})));
  CHECK(in(kN * m, state.moment) == Approx(3.0 * 10.0 / (4.0 * M_PI)));
  CHECK(in(kN, state.axial) == Approx(1.5 * 10.0 / (2.0 * M_PI)));
  const double straight = 6.0 * state.moment.value() / (0.5 * 0.01), direct = state.axial.value() / 0.05;
  CHECK(state.tension.value() > straight + direct);
  CHECK(state.tension.value() < 1.05 * straight + direct);
}

TEST_CASE("round wall: inward and outward bend alike, inward has no axial tension at the pull") {
  const auto out = assessed(round_state(band({{Angle{}, 10.0 * kN, {}}})));
  const auto in_ = assessed(round_state(band({{Angle{}, -10.0 * kN, {}}})));
  CHECK(in_.moment.value() == Approx(out.moment.value()));
  CHECK(in_.axial < Force{});
  CHECK(in_.tension < out.tension);
}

TEST_CASE("round wall: turned by any angle, it is the same") {
  const auto one = assessed(round_state(band({{Angle{}, 10.0 * kN, 3.0 * kN}, {2.0 * radian, -4.0 * kN, 1.0 * kN}})));
  const auto other =
      assessed(round_state(band({{1.3 * radian, 10.0 * kN, 3.0 * kN}, {-2.983185307179586 * radian, -4.0 * kN, 1.0 * kN}})));
  CHECK(other.tension.value() == Approx(one.tension.value()).epsilon(0.002));
}

TEST_CASE("round wall: numbers that are not usable") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  RoundBand made = band({{Angle{}, 10.0 * kN, {}}});
  SECTION("solid") { made.inside = Length{}; }
  SECTION("no wall") { made.outside = made.inside; }
  SECTION("no height") { made.height = Length{}; }
  SECTION("a height that is no number") { made.height = nan * m; }
  SECTION("a pull that is no number") { made.pulls[0].around = nan * kN; }
  CHECK_FALSE(why_not(round_state(made)).empty());
}

TEST_CASE("round wall: each number that is none has its reason, and none is above its limit") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  const auto why = [](auto change) {
    RoundBand made = band({{Angle{}, 10.0 * kN, {}}, {1.0 * radian, 2.0 * kN, 1.0 * kN}});
    change(made);
    return why_not(round_state(made));
  };
  const std::string not_usable = "a number of the round wall that the insert bends is not usable";
  for (const double bad : {nan, infinite})
    for (const std::size_t i : {0U, 1U}) {
      CHECK(why([&](RoundBand& b) { b.pulls[i].at = bad * radian; }) == not_usable);
      CHECK(why([&](RoundBand& b) { b.pulls[i].outward = bad * kN; }) == not_usable);
      CHECK(why([&](RoundBand& b) { b.pulls[i].around = bad * kN; }) == not_usable);
    }
  for (const double bad : {0.0, -1.0, nan}) {
    CHECK(why([&](RoundBand& b) { b.inside = bad * m; }) == not_usable);
    CHECK(why([&](RoundBand& b) { b.height = bad * m; }) == not_usable);
  }
  CHECK(why([](RoundBand& b) { b.outside = b.inside; }) == not_usable);
  CHECK(why([&](RoundBand& b) { b.outside = infinite * m; }) == not_usable);
  CHECK(why([&](RoundBand& b) { b.height = infinite * m; }) == not_usable);
}
