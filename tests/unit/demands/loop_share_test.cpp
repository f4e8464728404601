// The more loaded leg of a loop: statics of two legs at a knot.

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

#include "demands/loop_share.hpp"

using namespace firstpick;
using demands::loaded_leg_share;

TEST_CASE("straight pull: half each over the cosine of half the opening") {
  for (const double opening : {1.0, 30.0, 60.0, 90.0, 120.0})
    CHECK(loaded_leg_share(0.0 * deg, opening * deg).value() ==
          Approx(0.5 / std::cos(0.5 * opening * M_PI / 180.0)).epsilon(1e-12));
}

TEST_CASE("two legs in balance with a pull that leans between them") {
  for (const double opening : {20.0, 60.0, 90.0})
    for (const double lean : {0.0, 3.0, 9.9}) {
      const double delta = 0.5 * opening * M_PI / 180.0, alpha = lean * M_PI / 180.0;
      const double T1 = loaded_leg_share(lean * deg, opening * deg).value();
      const double T2 = (std::cos(alpha) - T1 * std::cos(delta)) / std::cos(delta);  // up and down
      CHECK(T2 >= 0.0);
      CHECK(T1 * std::sin(delta) - T2 * std::sin(delta) == Approx(std::sin(alpha)).margin(1e-12));  // sideways
    }
}

TEST_CASE("at half the opening and beyond, or without an opening, one leg carries all") {
  CHECK(loaded_leg_share(30.0 * deg, 60.0 * deg).value() == 1.0);
  CHECK(loaded_leg_share(45.0 * deg, 60.0 * deg).value() == 1.0);
  CHECK(loaded_leg_share(std::nextafter(30.0, 0.0) * deg, 60.0 * deg).value() == Approx(1.0));
  CHECK(loaded_leg_share(0.0 * deg, std::nullopt).value() == 1.0);
}

TEST_CASE("no share of what is no angle") {
  constexpr double none = std::numeric_limits<double>::quiet_NaN();
  CHECK(std::isnan(loaded_leg_share(none * deg, 60.0 * deg).value()));
  CHECK(std::isnan(loaded_leg_share(-1.0 * deg, 60.0 * deg).value()));
  for (const double opening : {none, 0.0, -10.0, 180.0, 200.0, std::numeric_limits<double>::infinity()})
    CHECK(std::isnan(loaded_leg_share(0.0 * deg, opening * deg).value()));
}
