// Panels at the limits of what can be computed: outlines that cannot be divided, forces that turn the panel
// in its plane, loads near the largest number there is, corners that the places of reading miss.

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/panel_estimate.hpp"
#include "demands/panel_meshes.hpp"
#include "demands/stepped_panel_bending.hpp"
#include "support/assessed.hpp"
#include "support/stepped_panels.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::Panel;
using demands::PanelForce;
using demands::PanelLoad;

namespace {

using Ring = std::vector<plan::PlanarPoint>;

Ring box(double x0, double y0, double x1, double y1) {
  return {{x0 * m, y0 * m}, {x1 * m, y0 * m}, {x1 * m, y1 * m}, {x0 * m, y1 * m}};
}

PanelForce pick(double x, double y, double up) { return {{x * m, y * m}, up * newton, {}, {}, {}, true}; }

// 4 x 2 m under 1 kPa, four picks that carry alike.
Panel four_by_two() {
  Panel panel;
  panel.outer = box(0.0, 0.0, 4.0, 2.0);
  panel.poisson = Ratio::from_value(0.2);
  panel.patch = 0.3 * m, panel.strip = 1.5 * m, panel.thickness = 0.15 * m;
  panel.loads.resize(1);
  panel.loads[0].pressure = 1000.0 * Pa;
  for (const double x : {0.8, 3.2})
    for (const double y : {0.4, 1.6}) panel.loads[0].forces.push_back(pick(x, y, 2000.0));
  return panel;
}

// With the same opening twice, in the middle: nothing that could be divided, in balance by its areas.
Panel twice_opened() {
  Panel panel = four_by_two();
  panel.holes = {box(1.8, 0.9, 2.2, 1.1), box(1.8, 0.9, 2.2, 1.1)};
  for (PanelForce& force : panel.loads[0].forces) force.up = 1000.0 * (8.0 - 2.0 * 0.08) / 4.0 * newton;
  return panel;
}

void times(PanelLoad& load, double more) {
  load.pressure *= more;
  for (PanelForce& force : load.forces) force.up *= more;
}

// Each power of ten up to the largest number: read right, or not at all.
constexpr int first_power = 295, last_power = 306;

}  // namespace

TEST_CASE("a panel that cannot be divided is not assessed, and has no estimate and no meshes") {
  const Panel panel = twice_opened();
  CHECK(why_not(demands::panel_bending(panel)) == "the bending of the panel could not be computed to 2 %");
  CHECK(demands::PanelEstimate::of(panel) == nullptr);
  CHECK(demands::PanelMeshes::of(panel)->mesh(0) == nullptr);
  CHECK(demands::PanelMeshes::of(panel)->membrane(0) == nullptr);
  Panel once = panel;
  once.holes.pop_back();
  CHECK(demands::PanelEstimate::of(once) != nullptr);
  CHECK(demands::PanelMeshes::of(once)->mesh(0) != nullptr);
  CHECK(demands::PanelMeshes::of(once)->membrane(0) != nullptr);
}

// The sums along the panel balance, its moment about the normal does not: 1 kN at 2.4 m, held by nothing.
TEST_CASE("a turned panel that its forces would spin in its plane is not assessed") {
  Panel panel = four_by_two();
  panel.in_plane = true;
  CHECK(is_assessed(demands::panel_bending(panel)));
  std::vector<PanelForce>& forces = panel.loads[0].forces;
  forces[0].along_y = 1000.0 * newton, forces[2].along_y = -1000.0 * newton;
  CHECK(why_not(demands::panel_bending(panel)) == "the bending of the panel could not be computed to 2 %");
  forces[0].along_y = forces[2].along_y = Force{};
  forces[0].along_x = 1000.0 * newton, forces[2].along_x = -1000.0 * newton;  // in one line: balanced
  CHECK(is_assessed(demands::panel_bending(panel)));
}

TEST_CASE(
    "one mesh: a load that gives no numbers across or along, or that its holds would carry, is not found") {
  Panel panel = four_by_two();
  panel.in_plane = true;
  const auto meshes = demands::PanelMeshes::of(panel);
  const demands::MeshedPanel* const mesh = meshes->mesh(0);
  const demands::PanelMembrane* const along = meshes->membrane(0);
  REQUIRE(mesh);
  REQUIRE(along);
  PanelLoad load = panel.loads[0];
  CHECK(mesh->found(panel, load, nullptr));
  CHECK(mesh->found(panel, load, along));
  load.pull_along_x = 1.0 * Pa;  // 8 N on 8 kN of load and 8 kN of picks: within 2e-3 of it
  CHECK(mesh->found(panel, load, along));
  load.pull_along_x = 20.0 * Pa;
  CHECK_FALSE(mesh->found(panel, load, along));
  CHECK(mesh->found(panel, load, nullptr));
  load.pull_along_x = std::nan("") * Pa;
  CHECK_FALSE(mesh->found(panel, load, along));
  load = panel.loads[0];
  load.pressure = std::nan("") * Pa;
  CHECK_FALSE(mesh->found(panel, load, nullptr));
}

// An edge of 4 m carries a resultant within its middle third. The nodes of a mesh and their widths let it a
// little farther out: the coarser, the farther.
TEST_CASE(
    "an edge rests on the ground only if it does on the mesh of the moments and on that of the forces "
    "along") {
  Panel panel = four_by_two();
  panel.in_plane = true;
  panel.edge = {{{0.0 * m, 0.0 * m}, {4.0 * m, 0.0 * m}}};
  const auto meshes = demands::PanelMeshes::of(panel);
  const demands::MeshedPanel* const mesh = meshes->mesh(0);
  const demands::PanelMembrane *const coarse = meshes->membrane(0), *const fine = meshes->membrane(4);
  REQUIRE((mesh && coarse && fine));
  PanelLoad load = panel.loads[0];
  int apart = 0;
  for (int i = 0; i <= 400; ++i) {
    load.edge = pick(2.0 + 0.002 * i, 0.0, 1000.0);
    const bool alone = mesh->rests_on_edge(panel, load, nullptr);
    CHECK((alone || !mesh->rests_on_edge(panel, load, fine)));
    apart += alone && !mesh->rests_on_edge(panel, load, fine);
  }
  CHECK(apart > 0);
  load.edge = pick(2.0 + 4.0 / 6.0 - 1e-3, 0.0, 1000.0);
  for (const auto* along : {coarse, fine}) CHECK(mesh->rests_on_edge(panel, load, along));
  load.edge = pick(2.8, 0.0, 1000.0);
  CHECK_FALSE(mesh->rests_on_edge(panel, load, nullptr));
}

TEST_CASE("the estimate: an edge that is not there, a force that is no pick, a pick at the very corner") {
  Panel panel = four_by_two();
  const auto estimate = demands::PanelEstimate::of(panel);
  REQUIRE(estimate);
  PanelLoad on_edge = panel.loads[0];
  on_edge.edge = pick(2.0, 0.0, 1000.0);
  const std::string beside = "a force acts beside the panel or in an opening";
  CHECK(why_not(estimate->bending({on_edge})) == beside);
  panel.edge = {{{0.0 * m, 0.0 * m}, {4.0 * m, 0.0 * m}}};
  const auto standing = demands::PanelEstimate::of(panel);
  REQUIRE(standing);
  CHECK(is_assessed(standing->bending({on_edge})));
  on_edge.edge->at.x = 2.9 * m;  // one end would lift
  CHECK(why_not(standing->bending({on_edge})) == beside);

  // What hangs on the panel is no pick: the moment there is read as anywhere, over no line.
  PanelLoad hung = panel.loads[0];
  for (PanelForce& force : hung.forces) force.up = 2500.0 * newton;
  PanelForce weight = pick(2.0, 1.0, -2000.0);
  weight.is_pick = false;
  hung.forces.push_back(weight);
  const auto with_weight = assessed(estimate->bending({hung})),
             alone = assessed(estimate->bending({panel.loads[0]}));
  CHECK(with_weight[0].bottom_tension.moment > alone[0].bottom_tension.moment);
  CHECK(in(m, with_weight[0].bottom_tension.at.x) == Approx(2.0).margin(0.3));

  // Four corners: lines half a patch beside them lie outside on two sides, and the others are read.
  PanelLoad corners = panel.loads[0];
  for (std::size_t i = 0; i < 4; ++i)
    corners.forces[i] = pick(i < 2 ? 0.0 : 4.0, i % 2 == 0 ? 0.0 : 2.0, 2000.0);
  const auto bent = assessed(estimate->bending({corners}));
  // As a beam of 4 m on its ends, w l^2/8 = 2 kN m/m on average; more at the edges.
  CHECK(bent[0].bottom_tension.moment.value() > 2000.0);
  CHECK(bent[0].bottom_tension.moment.value() < 2800.0);
}

TEST_CASE(
    "the estimate of loads near the largest number there is: in proportion, without end or none, never "
    "less") {
  const Panel panel = four_by_two();
  const auto estimate = demands::PanelEstimate::of(panel);
  REQUIRE(estimate);
  const std::vector<plan::PlanarPoint> middle{{2.0 * m, 1.0 * m}};
  const double one = assessed(estimate->bending(panel.loads))[0].bottom_tension.moment.value();
  const double least = assessed(estimate->moments(panel.loads[0], middle))[0]->most.value();
  int none = 0;
  for (int power = first_power; power <= last_power; ++power)
    for (const double more : {1.0, 2.0, 5.0}) {
      PanelLoad load = panel.loads[0];
      const double factor = more * std::pow(10.0, power - 3);
      times(load, factor);
      CAPTURE(power, more);
      const auto bent = estimate->bending({load});
      const double read = is_assessed(bent) ? assessed(bent)[0].bottom_tension.moment.value() : INFINITY;
      CHECK((!std::isfinite(read) || read == Approx(factor * one).epsilon(1e-6)));
      const auto at_middle = estimate->moments(load, middle);
      const double there = is_assessed(at_middle) ? assessed(at_middle)[0]->most.value() : INFINITY;
      CHECK((!is_assessed(at_middle) || there == Approx(factor * least).epsilon(1e-6)));
      none += !std::isfinite(read);
    }
  CHECK(none > 0);
  CHECK(none < 3 * (last_power - first_power + 1));
}

TEST_CASE("a stepped panel under loads near the largest number there is: in proportion or not at all") {
  demands::SteppedPanel panel = panel_of_two_halves();
  panel.loads.push_back({{1.0 * Pa, 2.0 * Pa}, {pick(0.5, 0.5, 1.0), pick(1.5, 0.5, 2.0)}});
  const double one = assessed(demands::stepped_panel_bending(panel))[0].bottom.tension.value();
  int none = 0;
  for (const double factor : {1e280, 1e303, 1e306}) {
    demands::SteppedPanel heavy = panel;
    for (Stress& pressure : heavy.loads[0].pressure) pressure *= factor;
    for (PanelForce& force : heavy.loads[0].forces) force.up *= factor;
    CAPTURE(factor);
    const auto bent = demands::stepped_panel_bending(heavy);
    const double read = is_assessed(bent) ? assessed(bent)[0].bottom.tension.value() : INFINITY;
    CHECK((!is_assessed(bent) || read == Approx(factor * one).epsilon(1e-6)));
    none += !is_assessed(bent);
  }
  CHECK(none > 0);
  CHECK(none < 3);
}

TEST_CASE(
    "a stepped panel: seams either way round, picks on its boundary, zones and openings that do not fit") {
  demands::SteppedPanel panel = panel_of_two_halves();
  panel.loads.push_back({{2500.0 * Pa, 5000.0 * Pa}, {pick(0.5, 0.5, 2500.0), pick(1.5, 0.5, 5000.0)}});
  const auto one = assessed(demands::stepped_panel_bending(panel))[0];
  demands::SteppedPanel other = panel;
  std::reverse(other.zones[1].outer.begin(), other.zones[1].outer.end());
  const auto turned = assessed(demands::stepped_panel_bending(other))[0];
  CHECK(turned.bottom.tension == one.bottom.tension);
  CHECK(turned.nodes == one.nodes);

  // Picks in the middle of both ends: (2500 x 0.5 + 5000 x 1.5)/2 = 4375 N at the thick end.
  other = panel;
  other.loads[0].forces = {pick(0.0, 0.5, 3125.0), pick(2.0, 0.5, 4375.0)};
  const auto ends = assessed(demands::stepped_panel_bending(other))[0];
  // At the step: 3125 x 1 - 2500/2 = 1875 N m, 6 M/t^2 = 1.125 MPa in the thin half, more at its edges.
  CHECK(in(MPa, ends.bottom.tension) > 1.1);
  CHECK(in(MPa, ends.bottom.tension) < 1.9);

  const std::string not_to_2 = "the bending of the stepped panel could not be computed to 2 %";
  other = panel;
  other.zones[1].outer = panel.zones[0].outer;  // one half twice, the other not: areas alone fit
  CHECK(why_not(demands::stepped_panel_bending(other)) == not_to_2);
  other = panel;
  const Ring opening = box(0.4, 0.1, 0.6, 0.3);
  other.holes = other.zones[0].holes = {opening, opening};
  CHECK(why_not(demands::stepped_panel_bending(other)) == not_to_2);
}

// A wedge of 5 degrees to a point, which every place of reading within a disc about it misses. On two picks
// on its axis. At x the width is 2 x tan(2.5 deg).
TEST_CASE("a panel that runs out to a point is read where there is something to read") {
  const double length = 6.0, slope = std::tan(2.5 * M_PI / 180.0);
  Panel panel;
  panel.outer = {{0.0 * m, 0.0 * m}, {length * m, -length * slope * m}, {length * m, length * slope * m}};
  panel.poisson = Ratio{};
  panel.patch = 0.1 * m, panel.strip = 0.5 * m, panel.thickness = 0.15 * m;
  panel.loads.resize(1);
  panel.loads[0].pressure = 1000.0 * Pa;
  // Weight w x^2 tan, its centre at 2/3 of the length; picks at 2 and 5.5 m.
  const double W = 1000.0 * length * length * slope, far = W * (4.0 - 2.0) / 3.5;
  panel.loads[0].forces = {pick(2.0, 0.0, W - far), pick(5.5, 0.0, far)};
  const auto moment_at = [&](double x) {  // mean over the width
    const double hang = 1000.0 * slope * x * x * x / 3.0;
    return ((x > 2.0 ? (W - far) * (x - 2.0) : 0.0) - hang) / (2.0 * x * slope);
  };
  double sagging = 0.0;
  for (double x = 2.0; x < 5.5; x += 0.01) sagging = std::max(sagging, moment_at(x));
  const auto level = assessed(demands::panel_bending(panel))[0];
  CHECK(level.bottom_tension.moment.value() > 0.97 * sagging);
  CHECK(level.bottom_tension.moment.value() < 1.25 * sagging);
  // Turned, pulled along by 100 Pa from end to end: the far pick holds it, n = 100 x/2 there.
  panel.in_plane = true;
  panel.loads[0].pull_along_x = -100.0 * Pa;
  panel.loads[0].forces[1].along_x = 100.0 * length * length * slope * newton;
  const auto turned = assessed(demands::panel_bending(panel))[0];
  const double more = (turned.bottom_tension.moment - level.bottom_tension.moment).value();
  CHECK(more > 0.8 * 100.0 * 5.0 / 2.0 * 0.15 / 6.0);
  CHECK(more < 3.0 * 100.0 * 5.5 / 2.0 * 0.15 / 6.0);
}
