// Panels that stand on an edge or hang upright: bending across the panel, forces along it.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "demands/panel_bending.hpp"
#include "demands/panel_meshes.hpp"
#include "demands/panel_supports.hpp"
#include "demands/plate_membrane.hpp"
#include "support/assessed.hpp"
#include "support/plates.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::Panel;
using demands::PanelForce;
using demands::PanelLoad;

namespace {

constexpr double t_m = 0.15, weight_Pa = 3600.0;  // of 24 kN/m3

// A strip of this length along y on its edge y = 0, two picks 0.2929 of it from the other end, turned to this angle.
Panel on_its_edge(double length_m, double width_m, double angle) {
  Panel panel;
  panel.outer = {{0.0 * m, 0.0 * m}, {width_m * m, 0.0 * m}, {width_m * m, length_m * m}, {0.0 * m, length_m * m}};
  panel.poisson = Ratio::from_value(0.2);
  panel.patch = 2.0 * t_m * m, panel.strip = 15.0 * t_m * m, panel.thickness = t_m * m;
  panel.in_plane = true;
  panel.edge = {{{0.0 * m, 0.0 * m}, {width_m * m, 0.0 * m}}};
  const double W = weight_Pa * length_m * width_m, c = std::cos(angle), s = std::sin(angle);
  const double up = W * 0.5 / (1.0 - 0.292893);  // of the hook, all at mid-depth
  PanelLoad load;
  load.pressure = weight_Pa * c * Pa;
  load.pull_along_y = -weight_Pa * s * Pa;
  for (const double x : {0.25 * width_m, 0.75 * width_m})
    load.forces.push_back({{x * m, (1.0 - 0.292893) * length_m * m}, 0.5 * up * c * newton, {}, 0.5 * up * s * newton, {},
                           true});
  load.edge = PanelForce{{0.5 * width_m * m, 0.0 * m}, (W - up) * c * newton, {}, (W - up) * s * newton, {}, false};
  panel.loads = {load};
  return panel;
}

demands::PanelBending bending_of(const Panel& panel) { return assessed(demands::panel_bending(panel)).front(); }
double kNm_per_m(const demands::PanelMoment& moment) { return moment.moment.value() / 1000.0; }

}  // namespace

TEST_CASE("a panel lifted by its edge bends by 0.0429 w a^2, and by the cosine of its angle") {
  const double w_a2 = weight_Pa / 1000.0 * 25.0;
  const auto flat = bending_of(on_its_edge(5.0, 1.0, 0.0));
  CHECK(kNm_per_m(flat.bottom_tension) == Approx(0.0429 * w_a2).epsilon(0.06));
  CHECK(in(m, flat.bottom_tension.at.y) == Approx(0.2929 * 5.0).margin(0.4));
  CHECK(kNm_per_m(flat.top_tension) > 0.9 * 0.0429 * w_a2);  // over half the width, a little beside the pick
  // With n t/6 on top: at most the whole weight along the panel over its width.
  const auto half_up = bending_of(on_its_edge(5.0, 1.0, 60.0 * deg.value()));
  const double axial = weight_Pa / 1000.0 * 5.0 * std::sin(60.0 * deg.value()) * t_m / 6.0;
  CHECK(kNm_per_m(half_up.bottom_tension) >= 0.999 * 0.5 * kNm_per_m(flat.bottom_tension));
  CHECK(kNm_per_m(half_up.bottom_tension) <= 1.03 * 0.5 * kNm_per_m(flat.bottom_tension) + 2.0 * axial);
}

TEST_CASE("upright nothing bends across: tension along is that of the weight below, no less") {
  Panel panel = on_its_edge(3.0, 2.4, 90.0 * deg.value());
  panel.edge.reset();
  panel.loads[0].edge.reset();
  panel.loads[0].pressure = 0.0 * Pa;
  const double W = weight_Pa * 3.0 * 2.4;
  for (PanelForce& force : panel.loads[0].forces) force.up = {}, force.at.y = 3.0 * m, force.along_y = 0.5 * W * newton;
  const auto hung = bending_of(panel);
  const double mean_N_per_m = W / 2.4;
  CHECK(6000.0 * kNm_per_m(hung.bottom_tension) / t_m >= mean_N_per_m);
  CHECK(6000.0 * kNm_per_m(hung.bottom_tension) / t_m <= 4.0 * mean_N_per_m);
  CHECK(hung.bottom_tension.moment.value() == Approx(hung.top_tension.moment.value()));
}

TEST_CASE("off mid-depth an edge's push bends the panel: N e over the width") {
  Panel panel = on_its_edge(5.0, 1.0, 60.0 * deg.value());
  const auto middle = bending_of(panel);
  PanelLoad& load = panel.loads[0];
  const double arm_m = 0.5 * t_m, push = load.edge->along_y.value();
  load.edge->above_middle = -arm_m * m;
  // Balanced by the picks, as a hook that stands a little farther out would.
  const double lever = (1.0 - 0.292893) * 5.0, more = push * arm_m / lever;
  for (PanelForce& force : load.forces) force.up = force.up - 0.5 * more * newton;
  load.edge->up = load.edge->up + more * newton;
  const auto corner = bending_of(panel);
  CHECK(std::abs(kNm_per_m(corner.bottom_tension) - kNm_per_m(middle.bottom_tension)) > 0.1 * push * arm_m / 1000.0);
  CHECK(std::abs(kNm_per_m(corner.bottom_tension) - kNm_per_m(middle.bottom_tension)) < 1.5 * push * arm_m / 1000.0);
}

TEST_CASE("of many angles the worst is found, and no less than alone") {
  Panel sweep = on_its_edge(5.0, 1.0, 0.0);
  sweep.loads.clear();
  for (int i = 0; i <= 10; ++i) sweep.loads.push_back(on_its_edge(5.0, 1.0, 9.0 * i * deg.value()).loads[0]);
  const auto all = assessed(demands::panel_bending(sweep));
  REQUIRE(all.size() == 11);
  const double worst = std::max_element(all.begin(), all.end(), [](const auto& a, const auto& b) {
                         return a.top_tension.moment < b.top_tension.moment;
                       })->top_tension.moment.value();
  const double alone = std::max(bending_of(on_its_edge(5.0, 1.0, 0.0)).top_tension.moment.value(),
                                bending_of(on_its_edge(5.0, 1.0, 9.0 * deg.value())).top_tension.moment.value());
  CHECK(worst >= 0.999 * alone);
  CHECK(worst <= 1.05 * alone);
  for (const auto& each : all) CHECK(each.top_tension.moment.value() > 0.0);
}

TEST_CASE("forces along a panel: statics of a section through it") {
  // 3 x 2, hung by two corners of its upper edge; weight 6 along -y.
  const PlateMesh mesh = meshed({rectangle_ring(0.0, 0.0, 3.0, 2.0), {}}, {{0.5, 2.0}, {2.5, 2.0}}, 0.15);
  const demands::MembraneSolver solver(mesh, 0.2);
  const auto solution = solver.solve(0.0, -1.0, {{mesh.focus_nodes[0], 0.0, 3.0}, {mesh.focus_nodes[1], 0.0, 3.0}});
  REQUIRE(solution);
  CHECK(solution->held() < 1e-9);
  double up = 0.0, along = 0.0, turning = 0.0;
  constexpr int parts = 600;
  for (int i = 0; i < parts; ++i) {
    const double x = 3.0 * (i + 0.5) / parts, y = 2.0 * (i + 0.5) / parts;
    up += (*solution->patch_forces({x, 1.013}, 0.0))[1] * 3.0 / parts;
    along += (*solution->patch_forces({1.507, y}, 0.0))[0] * 2.0 / parts;
    turning += (*solution->patch_forces({1.507, y}, 0.0))[0] * (y - 1.0) * 2.0 / parts;
  }
  CHECK(up == Approx(3.0 * 1.013).epsilon(0.02));
  CHECK(along == Approx(0.0).margin(0.05));
  // Half: 3 at 1.0 from the middle, its weight 3 at 0.75: sags by 0.75, tension at the lower edge.
  CHECK(turning == Approx(-0.75).epsilon(0.03));
}

TEST_CASE("the reaction of an edge: even under the middle, linear beside it, none that pulls, none across a door") {
  const PlateShape shape{{{0.0, 0.0}, {1.0, 0.0}, {1.0, 0.6}, {2.0, 0.6}, {2.0, 0.0}, {3.0, 0.0}, {3.0, 2.0}, {0.0, 2.0}}, {}};
  const PlateMesh mesh = meshed(shape, {}, 0.2);
  const std::array<PlatePoint, 2> line{{{0.0, 0.0}, {3.0, 0.0}}};
  for (const double at : {1.5, 1.7}) {
    const auto shares = demands::edge_shares(mesh, shape, line, {at, 0.0});
    REQUIRE(shares);
    double sum = 0.0, first = 0.0;
    for (const auto& each : *shares) {
      const double x = mesh.nodes[static_cast<std::size_t>(each.node)].x_m;
      CHECK((x <= 1.0 + 1e-6 || x >= 2.0 - 1e-6));
      CHECK(each.share >= 0.0);
      sum += each.share, first += each.share * x;
    }
    CHECK(sum == Approx(1.0));
    CHECK(first == Approx(at));
  }
  CHECK_FALSE(demands::edge_shares(mesh, shape, line, {2.9, 0.0}));
  CHECK_FALSE(demands::edge_shares(mesh, shape, {{{0.0, 1.0}, {3.0, 1.0}}}, {1.5, 1.0}));
  CHECK_FALSE(demands::edge_shares(mesh, shape, line, {std::nan(""), 0.0}));
}

TEST_CASE("one mesh serves a panel level and turned, where the places of both are meshed") {
  const Panel turned = on_its_edge(3.0, 2.0, 0.6);
  Panel level;
  level.outer = turned.outer, level.poisson = turned.poisson, level.patch = turned.patch,
  level.strip = turned.strip;
  PanelLoad load{.pressure = weight_Pa * Pa, .forces = {}};
  for (const double x : {0.4, 1.6})
    for (const double y : {0.6, 2.4})
      load.forces.push_back({{x * m, y * m}, 0.25 * weight_Pa * 6.0 * newton, {}, {}, {}, true});
  level.loads = {load};
  const std::array<const Panel*, 2> both_of{&level, &turned};
  const auto both = [&](const Panel& panel) {
    Panel meshed = panel;
    for (const Panel* each : both_of)
      for (const PanelForce& force : each->loads.front().forces) meshed.meshed_at.push_back(force.at);
    return meshed;
  };
  CHECK(demands::PanelMeshes::of(both(level)) == demands::PanelMeshes::of(both(turned)));
  CHECK(demands::PanelMeshes::of(level) != demands::PanelMeshes::of(turned));
  for (const Panel& panel : {level, turned}) {
    const demands::PanelBending alone = bending_of(panel), shared = bending_of(both(panel));
    const double most = std::max(kNm_per_m(alone.bottom_tension), kNm_per_m(alone.top_tension));
    CHECK(std::abs(kNm_per_m(shared.bottom_tension) - kNm_per_m(alone.bottom_tension)) <=
          demands::panel_accuracy * most);
    CHECK(std::abs(kNm_per_m(shared.top_tension) - kNm_per_m(alone.top_tension)) <=
          demands::panel_accuracy * most);

    Panel beside = panel;  // what is not on the panel is not meshed
    beside.meshed_at = {{-0.1 * m, 0.5 * m}, {1.0 * m, 3.2 * m}};
    CHECK(demands::PanelMeshes::of(beside) == demands::PanelMeshes::of(panel));
  }
  Panel without = level;  // a place where no force acts is no pick
  without.loads.front().forces.clear(), without.meshed_at = {{1.0 * m, 1.0 * m}};
  CHECK(!is_assessed(demands::panel_bending(without)));
}

TEST_CASE("a turned panel that cannot be computed is not assessed") {
  Panel panel = on_its_edge(3.0, 2.4, 30.0 * deg.value());
  SECTION("no thickness") { panel.thickness = 0.0 * m; }
  SECTION("an edge that is none") { panel.edge = {{{0.0 * m, 1.0 * m}, {2.4 * m, 1.0 * m}}}; }
  SECTION("no edge") { panel.edge.reset(); }
  SECTION("along it out of balance") { panel.loads[0].pull_along_y = {}; }
  SECTION("across it out of balance") { panel.loads[0].pressure = 2.0 * panel.loads[0].pressure; }
  SECTION("one end of the edge lifts") {
    // The hook stands far to one side, the reaction to the other.
    for (PanelForce& force : panel.loads[0].forces) force.at.x = force.at.x + 0.55 * m;
    const double hook = 2.0 * panel.loads[0].forces[0].up.value(), edge = panel.loads[0].edge->up.value();
    panel.loads[0].edge->at.x = (1.2 - 0.55 * hook / edge) * m;
  }
  SECTION("no number") { panel.loads[0].edge->along_y = std::numeric_limits<double>::quiet_NaN() * newton; }
  CHECK_FALSE(is_assessed(demands::panel_bending(panel)));
}
