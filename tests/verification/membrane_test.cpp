// Panels pulled in their own plane against CalculiX (2.20 where this was written), an independent finite element program, on
// shells of six nodes. It is run by the test; where `ccx` is not installed the cases say so and compare nothing.
//
// Where a force acts at a point the stress grows without limit as the mesh is refined: nothing is compared within 0.1 of
// the short side of a pick. Tolerance: 2 % of the largest force per width compared, for stresses at nodes are means of what
// the triangles around have, and 1 % of the largest stretch between two places.
//
// Outside  piece-cracking

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "support/calculix_plate.hpp"
#include "support/plates.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::MembraneForces;
using demands::MembraneNodeForce;
using demands::MembraneSolver;

namespace {

constexpr double nu = 0.2;

struct Pick {
  PlatePoint at;
  double x, y;  // of the weight; y of the last two comes from balance
};

struct Weight {
  double area = 0.0, turning = 0.0;  // turning: integral of x
};

Weight weight_of(const PlateMesh& mesh) {
  Weight sum;
  for (const auto& t : mesh.triangles) {
    const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(t[i])]; };
    const double area = 0.5 * std::abs((at(1).x_m - at(0).x_m) * (at(2).y_m - at(0).y_m) -
                                       (at(2).x_m - at(0).x_m) * (at(1).y_m - at(0).y_m));
    sum.area += area;
    sum.turning += area * (at(0).x_m + at(1).x_m + at(2).x_m) / 3.0;
  }
  return sum;
}

// Forces on the panel, the last two upward ones such that it hangs at rest.
std::vector<Pick> at_rest(std::vector<Pick> picks, const Weight& weight) {
  double up = weight.area, turning = weight.turning;
  for (std::size_t i = 0; i < picks.size(); ++i) {
    picks[i].x *= weight.area;
    picks[i].y *= weight.area;
    turning += picks[i].at.y_m * picks[i].x;
    if (i + 2 >= picks.size()) continue;
    up -= picks[i].y;
    turning -= picks[i].at.x_m * picks[i].y;
  }
  Pick &one = picks[picks.size() - 2], &other = picks.back();
  other.y = (turning - one.at.x_m * up) / (other.at.x_m - one.at.x_m);
  one.y = up - other.y;
  return picks;
}

// Its own weight pulls down along y, the picks carry it.
void compare_hung(const PlateShape& shape, const std::vector<Pick>& picks, const std::vector<PlatePoint>& places) {
  if (!calculix_is_installed()) {
    WARN("CalculiX (ccx) is not installed: nothing was compared");
    return;
  }
  std::vector<PlatePoint> focus;
  for (const Pick& pick : picks) focus.push_back(pick.at);
  focus.insert(focus.end(), places.begin(), places.end());
  const PlateMesh mesh = meshed(shape, focus, 0.04);
  const Weight weight = weight_of(mesh);
  std::vector<MembraneNodeForce> forces;
  for (const Pick& pick : at_rest(picks, weight)) forces.push_back({mesh.focus_nodes[forces.size()], pick.x, pick.y});
  const auto ours = MembraneSolver(mesh, nu).solve(0.0, -1.0, forces);
  REQUIRE(ours);
  CHECK(ours->held() < 1e-9 * weight.area);
  const auto theirs = calculix_membrane(mesh, {0.0, -1.0}, forces, nu, places);
  REQUIRE(theirs);

  double most = 0.0, most_moved = 0.0;
  for (const MembraneForces& n : theirs->forces)
    for (const double each : n) most = std::max(most, std::abs(each));
  const auto apart = [](const auto& a, const auto& b) { return std::array{a[0] - b[0], a[1] - b[1]}; };
  const PlatePoint first = places.front();
  const auto along = [&](std::size_t i, const std::array<double, 2>& moved) {  // the stretch between two places: no turn in it
    const double x = places[i].x_m - first.x_m, y = places[i].y_m - first.y_m;
    return (moved[0] * x + moved[1] * y) / std::hypot(x, y);
  };
  for (std::size_t i = 1; i < places.size(); ++i)
    most_moved = std::max(most_moved, std::abs(along(i, apart(theirs->moved[i], theirs->moved[0]))));
  for (std::size_t i = 0; i < places.size(); ++i) {
    CAPTURE(places[i].x_m, places[i].y_m, most);
    const auto here = ours->patch_forces(places[i], 0.004);
    REQUIRE(here);
    for (std::size_t k = 0; k < 3; ++k) {
      CAPTURE(k, (*here)[k], theirs->forces[i][k]);
      CHECK(std::abs((*here)[k] - theirs->forces[i][k]) <= 0.02 * most);
    }
    if (i == 0) continue;
    const auto moved = [&](std::size_t place) { return ours->displacement(mesh.focus_nodes[picks.size() + place]); };
    const double stretch = along(i, apart(moved(i), moved(0)));
    const double their_stretch = along(i, apart(theirs->moved[i], theirs->moved[0]));
    CAPTURE(stretch, their_stretch);
    CHECK(std::abs(stretch - their_stretch) <= 0.01 * most_moved);
  }
}

}  // namespace

TEST_CASE("panel 1 x 1 hung upright on two picks in its top edge", "[calculix]") {
  compare_hung({rectangle_ring(-0.5, -0.5, 0.5, 0.5), {}}, {{{-0.3, 0.5}, 0.0, 0.5}, {{0.3, 0.5}, 0.0, 0.5}},
               {{0.0, 0.0}, {0.0, 0.5}, {0.0, 0.3}, {-0.3, 0.3}, {0.3, 0.0}, {0.0, -0.3}, {0.45, 0.2}});
}

TEST_CASE("panel 1 x 1 with a window, upright on two picks with inclined legs", "[calculix]") {
  compare_hung({rectangle_ring(-0.5, -0.5, 0.5, 0.5), {rectangle_ring(-0.2, -0.25, 0.25, 0.15)}},
               {{{-0.3, 0.5}, 0.25, 0.5}, {{0.3, 0.5}, -0.25, 0.5}},
               {{0.0, 0.5}, {0.0, 0.32}, {-0.35, -0.05}, {0.37, -0.05}, {0.0, -0.38}, {-0.45, 0.3}, {0.45, -0.4}});
}

TEST_CASE("panel of 1 x 2 with a door cut in from below, upright on three picks", "[calculix]") {
  compare_hung({{{-1.0, -0.5}, {0.1, -0.5}, {0.1, 0.15}, {0.5, 0.15}, {0.5, -0.5}, {1.0, -0.5}, {1.0, 0.5}, {-1.0, 0.5}}, {}},
               {{{-0.7, 0.5}, 0.0, 0.37}, {{-0.05, 0.5}, 0.0, 0.33}, {{0.75, 0.5}, 0.0, 0.30}},
               {{0.3, 0.5}, {0.3, 0.32}, {-0.4, 0.5}, {-0.4, 0.0}, {-0.8, -0.2}, {0.75, 0.1}, {-0.1, 0.1}});
}
