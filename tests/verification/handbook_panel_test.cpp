// Line method of the PCI Design Handbook for panels stripped flat, from memory; its numbers for one panel computed beforehand
// by a separate script. 20 ft x 10 ft x 8 in, 150 lb/ft3, multiplier 1.4: 140 psf. Tolerance: half a unit of the last digit.
// The plate of panel_bending.hpp is compared with it: where the strips are half the panel the two have the same statics.
//
// Computed piece-cracking

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/handbook_panel.hpp"
#include "demands/panel_bending.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

const Length a = 20.0 * ft, b = 10.0 * ft, t = 8.0 * inch;
const Stress w = 140.0 * psf;
const Moment lb_in = lbf * inch;

Stress stress(const demands::StripMoment& strip) { return 6.0 * strip.per_width() / (t * t); }

}  // namespace

TEST_CASE("four picks: moments on strips of 60 and 120 in") {
  const auto panel = demands::four_picks(w, a, b, 15.0 * t);
  CHECK(in(lb_in, panel.along.moment) == Approx(72061.0).margin(2.0));  // from 0.9722 psi, which is rounded
  CHECK(in(lb_in, panel.across.moment) == Approx(36030.0).margin(1.0));
  CHECK(in(inch, panel.along.width) == Approx(60.0));
  CHECK(in(inch, panel.across.width) == Approx(120.0));
  CHECK(in(psi, stress(panel.along)) == Approx(112.6).margin(0.05));
  CHECK(in(psi, stress(panel.across)) == Approx(28.1).margin(0.06));
}

TEST_CASE("coefficients: 0.0107, 0.0027 and 0.0429") {
  const Moment unit = w * a * a * b;
  CHECK(in(unit, demands::four_picks(w, a, b, a).along.moment) == Approx(0.0107).margin(0.00005));
  CHECK(in(unit, demands::eight_picks(w, a, b, a).along.moment) == Approx(0.0027).margin(0.00005));
  CHECK(in(unit, demands::edge_lift(w, a, b).moment) == Approx(0.0429).margin(0.00005));
}

TEST_CASE("other places by the same statics: 0.20 and 0.25 of the length, 0.0250 and 0.03125 w L^2 for the whole width") {
  // mechanics of beams, computed beforehand: M over w L^2 at c = 0.20: -0.0200, +0.0250; at c = 0.25: -0.03125, 0
  const Moment unit = 0.5 * w * a * a * b;
  CHECK(in(unit, demands::four_picks_at(w, a, b, 0.20 * a, 0.2 * b, a).along.moment) == Approx(0.0250).margin(5e-7));
  CHECK(in(unit, demands::four_picks_at(w, a, b, 0.25 * a, 0.2 * b, a).along.moment) == Approx(0.03125).margin(5e-7));
  const double c = 0.5 * (std::sqrt(2.0) - 1.0);
  const auto same = demands::four_picks_at(w, a, b, c * a, c * b, 15.0 * t);
  const auto handbook = demands::four_picks(w, a, b, 15.0 * t);
  CHECK(in(lb_in, same.along.moment) == Approx(in(lb_in, handbook.along.moment)));
  CHECK(in(lb_in, same.across.moment) == Approx(in(lb_in, handbook.across.moment)));
  CHECK(in(inch, same.along.width) == Approx(60.0));
  CHECK(in(inch, same.across.width) == Approx(120.0));
}

TEST_CASE("the plate sags as the line method says at mid-length on average, and more in places") {
  demands::Panel panel;
  panel.outer = {{0.0 * m, 0.0 * m}, {a, 0.0 * m}, {a, b}, {0.0 * m, b}};
  panel.poisson = Ratio::from_value(0.2);
  panel.patch = 2.0 * t;
  panel.strip = 15.0 * t;
  panel.loads.resize(1);
  panel.loads[0].pressure = w;
  for (const Length& x : {Length{0.2071 * a}, Length{0.7929 * a}})
    for (const Length& y : {Length{0.2071 * b}, Length{0.7929 * b}})
      panel.loads[0].forces.push_back({{x, y}, 0.25 * w * a * b, {}, {}, {}, true});
  const auto bent = assessed(demands::panel_bending(panel)).front();
  const auto line = demands::four_picks(w, a, b, 15.0 * t).along.per_width();
  // Row b/a = 2 of the plate on four picks: M_y .0903 against .0858 q a^2, 5 % more; here as a mean over a disc, with error.
  CHECK(bent.bottom_tension.moment >= line);
  CHECK(bent.bottom_tension.moment <= 1.12 * line);
  CHECK(bent.top_tension.moment >= 0.9 * line);
  CHECK(bent.top_tension.moment <= 1.35 * line);
}
