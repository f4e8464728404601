// Panels in steps against statics of beams, where they bend as beams, and against the plate of one thickness.
//
//   step across the span    no force along the panel: tension 6 M/t^2 of each part, M per width
//   rib along the span      composite section: tension M y/I
//
// Closed forms; the numbers are computed here from them. Tolerance: 2 % of accuracy asked for and as much put on top, and what
// a strip of this width differs from a beam.

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

PanelForce pick(double x, double y, double up_N) { return {{x * m, y * m}, up_N * newton, {}, {}, {}, true}; }

constexpr double density = 25000.0;  // N/m3

// Weight by thickness; the picks of `places` carry alike.
SteppedPanel panel(const Ring& outer, std::vector<PanelZone> zones, const std::vector<std::pair<double, double>>& places,
                   double nu) {
  SteppedPanel made{.outer = outer, .holes = {}, .zones = std::move(zones), .poisson = Ratio::from_value(nu), .loads = {},
                    .patch = 0.2 * m, .strip = 1.5 * m};
  SteppedLoad load;
  double weight = 0.0;
  for (const PanelZone& zone : made.zones) {
    const double t = in(m, Length{zone.top - zone.bottom});
    load.pressure.push_back(density * t * Pa);
    double doubled = 0.0;
    for (std::size_t i = 0; i < zone.outer.size(); ++i) {
      const auto &a = zone.outer[i], &b = zone.outer[(i + 1) % zone.outer.size()];
      doubled += (a.x * b.y - b.x * a.y).value();
    }
    weight += 0.5 * std::abs(doubled) * t * density;
  }
  for (const auto& [x, y] : places) load.forces.push_back(pick(x, y, weight / static_cast<double>(places.size())));
  made.loads = {load};
  return made;
}

double bottom_MPa(const SteppedBending& bent) { return in(MPa, bent.bottom.tension); }
double top_MPa(const SteppedBending& bent) { return in(MPa, bent.top.tension); }

}  // namespace

TEST_CASE("one zone is the plate of one thickness, wherever the reference plane lies") {
  const Ring outer = box(0.0, 0.0, 4.0, 2.0);
  const std::vector<std::pair<double, double>> picks{{0.8, 0.4}, {3.2, 0.4}, {3.2, 1.6}, {0.8, 1.6}};
  Panel plain{.outer = outer, .holes = {}, .poisson = Ratio::from_value(0.2), .loads = {}, .patch = 0.2 * m, .strip = 1.5 * m};
  plain.loads.resize(1);
  plain.loads[0].pressure = density * 0.1 * Pa;
  for (const auto& [x, y] : picks) plain.loads[0].forces.push_back(pick(x, y, density * 0.1 * 8.0 / 4.0));
  const auto bent = assessed(panel_bending(plain)).front();
  for (const double top : {0.05, 0.0, 0.3}) {
    const auto stepped = assessed(stepped_panel_bending(
        panel(outer, {{outer, {}, top * m, (top - 0.1) * m}}, picks, 0.2))).front();
    CAPTURE(top);
    CHECK(bottom_MPa(stepped) == Approx(6.0 * bent.bottom_tension.moment.value() / 0.01 / 1e6).epsilon(0.05));
    CHECK(top_MPa(stepped) == Approx(6.0 * bent.top_tension.moment.value() / 0.01 / 1e6).epsilon(0.05));
  }
}

TEST_CASE("a step across the span: each part by its own thickness") {
  // 4 m x 0.5 m, thick to 1.2 m from both ends, flush above; picks 0.1 m from its ends.
  const std::vector<PanelZone> zones{{box(0.0, 0.0, 1.2, 0.5), {}, 0.0 * m, -0.16 * m},
                                     {box(1.2, 0.0, 2.8, 0.5), {}, 0.0 * m, -0.10 * m},
                                     {box(2.8, 0.0, 4.0, 0.5), {}, 0.0 * m, -0.16 * m}};
  const auto bent = assessed(stepped_panel_bending(
      panel(box(0.0, 0.0, 4.0, 0.5), zones, {{0.1, 0.05}, {0.1, 0.45}, {3.9, 0.05}, {3.9, 0.45}}, 0.0))).front();
  // Per metre of width: thick w 4 kN/m, thin 2.5 kN/m.
  const double thick = density * 0.16, thin = density * 0.10, V = 1.2 * thick + 0.8 * thin;
  const double M = V * 1.9 - 1.2 * thick * (2.0 - 0.6) - 0.8 * thin * 0.4;
  const double expected = 6.0 * M / 0.01 / 1e6;
  CAPTURE(expected, bottom_MPa(bent), bent.error);
  CHECK(bottom_MPa(bent) >= 0.99 * expected);
  CHECK(bottom_MPa(bent) <= 1.06 * expected);
}

TEST_CASE("a rib along the span works with its slab") {
  // 4 m x 0.6 m slab of 0.1 m, rib 0.3 m wide to 0.25 m of depth; picks on the line of the rib.
  const std::vector<PanelZone> zones{{box(0.0, 0.0, 4.0, 0.15), {}, 0.0 * m, -0.10 * m},
                                     {box(0.0, 0.15, 4.0, 0.45), {}, 0.0 * m, -0.25 * m},
                                     {box(0.0, 0.45, 4.0, 0.6), {}, 0.0 * m, -0.10 * m}};
  const auto bent = assessed(stepped_panel_bending(
      panel(box(0.0, 0.0, 4.0, 0.6), zones, {{0.1, 0.3}, {3.9, 0.3}}, 0.0))).front();
  const double slab = 0.3 * 0.1, rib = 0.3 * 0.25, A = slab + rib;
  const double from_top = (slab * 0.05 + rib * 0.125) / A;
  const double I = 0.3 * std::pow(0.1, 3) / 12.0 + slab * std::pow(from_top - 0.05, 2) + 0.3 * std::pow(0.25, 3) / 12.0 +
                   rib * std::pow(0.125 - from_top, 2);
  const double w = density * A, M = w * 16.0 / 8.0 - w * 4.0 * 0.1 / 2.0;
  const double expected = M * (0.25 - from_top) / I / 1e6;
  CAPTURE(expected, bottom_MPa(bent), bent.error);
  CHECK(bottom_MPa(bent) >= 0.99 * expected);
  CHECK(bottom_MPa(bent) <= 1.06 * expected);
}

TEST_CASE("the same rib on top, everything turned upside down, is asked the same") {
  const std::vector<std::pair<double, double>> picks{{0.1, 0.3}, {3.9, 0.3}};
  const auto with = [&](double slab_top, double slab_bottom, double rib_top, double rib_bottom) {
    return panel(box(0.0, 0.0, 4.0, 0.6), {{box(0.0, 0.0, 4.0, 0.15), {}, slab_top * m, slab_bottom * m},
                                           {box(0.0, 0.15, 4.0, 0.45), {}, rib_top * m, rib_bottom * m},
                                           {box(0.0, 0.45, 4.0, 0.6), {}, slab_top * m, slab_bottom * m}}, picks, 0.2);
  };
  const SteppedPanel below = with(0.0, -0.10, 0.0, -0.25);
  SteppedPanel above = with(0.10, 0.0, 0.25, 0.0);
  for (Stress& pressure : above.loads[0].pressure) pressure = -pressure;
  for (PanelForce& force : above.loads[0].forces) force.up = -force.up;
  const auto a = assessed(stepped_panel_bending(below)).front(), b = assessed(stepped_panel_bending(above)).front();
  CHECK(top_MPa(b) == Approx(bottom_MPa(a)).epsilon(0.03));  // far from the picks
}

TEST_CASE("thrust of legs at the height of the inserts presses and bends the panel") {
  // Legs pull in with H each at the top face of a uniform strip, off the middle by t/2: -H/(b t) and -+6 H t/2/(b t^2).
  const Ring outer = box(0.0, 0.0, 4.0, 0.5);
  auto made = panel(outer, {{outer, {}, 0.05 * m, -0.05 * m}}, {{0.1, 0.05}, {0.1, 0.45}, {3.9, 0.05}, {3.9, 0.45}}, 0.0);
  const double w = density * 0.1, M = w * 16.0 / 8.0 - w * 4.0 * 0.1 / 2.0;  // per width
  const double upright = 6.0 * M / 0.01 / 1e6;
  for (std::size_t i = 0; i < 4; ++i) {
    made.loads[0].forces[i].along_x = (i < 2 ? 1.0 : -1.0) * 1000.0 * newton;
    made.loads[0].forces[i].above_middle = 0.05 * m;
  }
  const double H = 2000.0 / 0.5;  // per width
  const double expected = upright + (-H / 0.1 + 6.0 * H * 0.05 / 0.01) / 1e6;
  const auto bent = assessed(stepped_panel_bending(made)).front();
  CAPTURE(expected, bottom_MPa(bent));
  CHECK(bottom_MPa(bent) >= 0.99 * expected);
  CHECK(bottom_MPa(bent) <= 1.06 * expected);
}
