// What a stepped panel is refused for.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include "demands/stepped_panel_bending.hpp"
#include "support/assessed.hpp"
#include "support/stepped_panels.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::demands;

namespace {

using Ring = std::vector<plan::PlanarPoint>;

Ring box(double x0, double y0, double x1, double y1) {
  return {{x0 * m, y0 * m}, {x1 * m, y0 * m}, {x1 * m, y1 * m}, {x0 * m, y1 * m}};
}

// Half of it thicker; balanced about the middle of each half.
SteppedPanel halves() {
  SteppedPanel made = panel_of_two_halves();
  SteppedLoad load;
  load.pressure = {2500.0 * Pa, 5000.0 * Pa};
  load.forces = {{{0.5 * m, 0.5 * m}, 2500.0 * newton, {}, {}, {}, true}, {{1.5 * m, 0.5 * m}, 5000.0 * newton, {}, {}, {}, true}};
  made.loads = {load};
  return made;
}

}  // namespace

TEST_CASE("a stepped panel on two picks is computed") {
  const auto bent = assessed(stepped_panel_bending(halves()));
  REQUIRE(bent.size() == 1);
  CHECK(bent[0].bottom.tension > Stress{});
  CHECK(bent[0].top.tension > Stress{});
}

TEST_CASE("what is no stepped panel is refused") {
  SteppedPanel panel = halves();
  const double nan = std::nan("");
  SECTION("no load") { panel.loads.clear(); }
  SECTION("no pick") { panel.loads[0].forces.clear(); }
  SECTION("no zones") { panel.zones.clear(); }
  SECTION("a zone is left out") { panel.zones.pop_back(), panel.loads[0].pressure.pop_back(); }
  SECTION("zones overlap") { panel.zones[0].outer = box(0.0, 0.0, 1.1, 1.0); }
  SECTION("a zone without thickness") { panel.zones[0].bottom = panel.zones[0].top; }
  SECTION("a zone upside down") { std::swap(panel.zones[0].bottom, panel.zones[0].top); }
  SECTION("a height that is none") { panel.zones[0].top = Length::from_value(nan); }
  SECTION("a zone without load") { panel.loads[0].pressure.pop_back(); }
  SECTION("a load that is none") { panel.loads[0].pressure[0] = Stress::from_value(nan); }
  SECTION("a force that is none") { panel.loads[0].forces[0].up = Force::from_value(nan); }
  SECTION("Poisson's ratio") { panel.poisson = Ratio::from_value(0.5); }
  SECTION("no patch") { panel.patch = Length{}; }
  SECTION("strip") { panel.strip = Length::from_value(nan); }
  SECTION("beside the panel") { panel.loads[0].forces[0].at.x = -0.1 * m; }
  SECTION("out of balance") { panel.loads[0].forces[0].up *= 1.1; }
  CHECK_FALSE(why_not(stepped_panel_bending(panel)).empty());
}

TEST_CASE("a stepped panel: each number that is none and each thing that is not there has its reason") {
  const auto why = [](auto change) {
    SteppedPanel panel = halves();
    change(panel);
    return why_not(stepped_panel_bending(panel));
  };
  const double nan = std::nan("");
  const std::string nothing = "the panel has no outline, no zone, no load or no pick",
                    number = "a number of the panel is not usable",
                    thin = "a zone of the panel has no thickness",
                    cover = "the zones of the panel do not cover it once",
                    load = "a load of the panel is not a usable number",
                    force = "a force on the panel is not a usable number";
  CHECK(why([](SteppedPanel& p) { p.loads.clear(); }) == nothing);
  CHECK(why([](SteppedPanel& p) { p.loads[0].forces.clear(); }) == nothing);
  CHECK(why([](SteppedPanel& p) { p.zones.clear(), p.loads[0].pressure.clear(); }) == nothing);
  for (const double bad : {-0.01, 0.5, nan})
    CHECK(why([&](SteppedPanel& p) { p.poisson = Ratio{bad}; }) == number);
  for (const double bad : {0.0, -0.1, nan, double{INFINITY}}) {
    CHECK(why([&](SteppedPanel& p) { p.patch = bad * m; }) == number);
    CHECK(why([&](SteppedPanel& p) { p.strip = bad * m; }) == number);
  }
  for (const std::size_t zone : {0U, 1U}) {
    CHECK(why([&](SteppedPanel& p) { p.zones[zone].bottom = p.zones[zone].top; }) == thin);
    CHECK(why([&](SteppedPanel& p) { p.zones[zone].top = nan * m; }) == thin);
    CHECK(why([&](SteppedPanel& p) { p.zones[zone].bottom = nan * m; }) == thin);
    CHECK(why([&](SteppedPanel& p) { p.zones[zone].bottom = -double{INFINITY} * m; }) == thin);
    CHECK(why([&](SteppedPanel& p) { p.zones[zone].top = double{INFINITY} * m; }) == thin);
    CHECK(why([&](SteppedPanel& p) { p.loads[0].pressure[zone] = nan * Pa; }) == load);
    CHECK(why([&](SteppedPanel& p) { p.loads[0].forces[zone].up = nan * newton; }) == force);
    CHECK(why([&](SteppedPanel& p) { p.loads[0].forces[zone].along_x = nan * newton; }) == force);
    CHECK(why([&](SteppedPanel& p) { p.loads[0].forces[zone].along_y = nan * newton; }) == force);
    CHECK(why([&](SteppedPanel& p) { p.loads[0].forces[zone].above_middle = nan * m; }) == force);
  }
  CHECK(why([](SteppedPanel& p) { p.zones[0].outer = box(0.0, 0.0, 1.001, 1.0); }) == cover);
  CHECK(why([](SteppedPanel& p) { p.zones[0].outer = box(0.0, 0.0, 0.999, 1.0); }) == cover);
  CHECK(why([](SteppedPanel& p) { p.loads[0].pressure.pop_back(); }) == "a zone of the panel has no load");
  CHECK(why([](SteppedPanel& p) { p.loads[0].forces[0].at.x = -0.1 * m; }) ==
        "a force acts beside the panel or in an opening");
}

// Cut across a zone: the moment of what lies to one side, over the section modulus. Two picks at the quarter
// points of a panel that is 0.1 m thick and 1 m wide: w l^2 (1/8 - 1/8) in the middle, w l^2/32 = 312.5 N m
// over each pick.
TEST_CASE("a stepped panel of one thickness bends as a beam over its picks") {
  SteppedPanel panel = halves();
  panel.poisson = Ratio{};
  panel.zones[1].bottom = -0.1 * m;
  panel.loads[0].pressure = {2500.0 * Pa, 2500.0 * Pa};
  panel.loads[0].forces[1].up = 2500.0 * newton;
  const auto bent = assessed(stepped_panel_bending(panel)).front();
  // 6 M / t^2 = 0.1875 MPa as a mean over the whole width, more over the strip of half of it, beside the pick
  // less.
  CHECK(in(MPa, bent.top.tension) > 0.1875 * 0.9);
  CHECK(in(MPa, bent.top.tension) < 0.1875 * 1.6);
  CHECK(std::min(std::abs(in(m, bent.top.at.x) - 0.5), std::abs(in(m, bent.top.at.x) - 1.5)) < 0.1);
  CHECK(bent.error <= 0.05);
}
