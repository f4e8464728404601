// What a stepped panel is refused for.

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/stepped_panel_bending.hpp"
#include "support/assessed.hpp"

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
  SteppedPanel made{.outer = box(0.0, 0.0, 2.0, 1.0), .holes = {}, .zones = {}, .poisson = Ratio::from_value(0.2), .loads = {},
                    .patch = 0.2 * m, .strip = 1.5 * m};
  made.zones = {{box(0.0, 0.0, 1.0, 1.0), {}, 0.0 * m, -0.1 * m}, {box(1.0, 0.0, 2.0, 1.0), {}, 0.0 * m, -0.2 * m}};
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
