// What the plate kernel gives no numbers for: panels that nothing holds, loads that are none, outlines that
// cannot be divided. Beside each what it just still does.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/panel_equations.hpp"
#include "demands/panel_readings.hpp"
#include "demands/panel_supports.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/stepped_plate.hpp"
#include "support/plates.hpp"

using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double without_end = std::numeric_limits<double>::infinity();

PlateShape box(double width, double height) { return {rectangle_ring(0.0, 0.0, width, height), {}}; }

// A node that no triangle holds has no stiffness at all.
PlateMesh with_loose_node(PlateMesh mesh) {
  mesh.nodes.push_back({0.9, 0.45});
  return mesh;
}

double covered_m2(const PlateMesh& mesh) {
  double area = 0.0;
  for (const auto& t : mesh.triangles) {
    const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(t[i])]; };
    area += 0.5 * ((at(1).x_m - at(0).x_m) * (at(2).y_m - at(0).y_m) -
                   (at(2).x_m - at(0).x_m) * (at(1).y_m - at(0).y_m));
  }
  return area;
}

}  // namespace

TEST_CASE("equations give numbers if they were factored to the end and no pivot is next to nothing") {
  const auto with = [](double pivot) { return gives_numbers(true, std::array{2.0, pivot, 1.0}); };
  CHECK(with(2.0));
  CHECK(with(2.1e-13));
  for (const double bad : {1.9e-13, 0.0, -1.0, no_number, without_end}) CHECK_FALSE(with(bad));
  CHECK_FALSE(gives_numbers(false, std::array{1.0, 1.0}));
  CHECK_FALSE(gives_numbers(true, {}));  // of no equation at all
}

TEST_CASE("a plate that is not held at three places out of line gives no numbers") {
  const PlateMesh mesh = meshed(box(2.0, 1.0), {}, 0.3);
  const std::vector<int> three = holding_nodes(mesh);
  const auto solved_on = [&](const std::vector<int>& held) {
    PlateProblem problem;
    problem.poisson = 0.2, problem.held = held;
    return PlateSolver(mesh, problem).solve(1.0, {});
  };
  CHECK_FALSE(solved_on({}));
  CHECK_FALSE(solved_on({three[0], three[1]}));
  const auto held = solved_on(three);
  REQUIRE(held);
  double sum = 0.0;
  for (const int freedom : three) sum += held->reaction(freedom);
  CHECK(sum == Approx(2.0));  // 1 on 2 m2
}

TEST_CASE(
    "a node that nothing holds, and a load that is no number, give no numbers: across, along, stepped") {
  const PlateMesh mesh = meshed(box(2.0, 1.0), {}, 0.3), loose = with_loose_node(mesh);
  const auto across = [](const PlateMesh& of) {
    PlateProblem problem;
    problem.held = holding_nodes(of);
    return PlateSolver(of, problem).solve(1.0, {}).has_value();
  };
  CHECK(across(mesh));
  CHECK_FALSE(across(loose));

  const auto along = [](const PlateMesh& of, double pull) {
    return MembraneSolver(of, 0.2).solve(pull, 0.0, {}).has_value();
  };
  CHECK(along(mesh, 1.0));
  CHECK_FALSE(along(mesh, no_number));
  CHECK_FALSE(along(mesh, without_end));
  CHECK_FALSE(along(loose, 1.0));

  const auto stepped = [](const PlateMesh& of, double pressure) {
    const SteppedSolver solver(of, 0.2, std::vector<std::size_t>(of.triangles.size(), 0), {{-0.1, 0.1}});
    return solver.solve({pressure}, {}, {});
  };
  CHECK_FALSE(stepped(mesh, no_number));
  CHECK_FALSE(stepped(mesh, without_end));
  CHECK_FALSE(stepped(loose, 1.0));
  const auto found = stepped(mesh, 1.0);
  REQUIRE(found);
  CHECK(found->stress({1.0, 0.5}, PlateFace::bottom));
  CHECK_FALSE(found->stress({2.1, 0.5}, PlateFace::bottom));  // beside the panel
  CHECK(found->zone({1.0, 0.5}) == 0U);
  CHECK_FALSE(found->zone({2.1, 0.5}));
}

TEST_CASE("a mesh: as many points as are counted on, no more") {
  CHECK(plate_mesh(box(1.0, 1.0), {}, 0.006));        // some 33000
  CHECK_FALSE(plate_mesh(box(1.0, 1.0), {}, 0.004));  // some 74000
}

TEST_CASE(
    "a mesh: a place to be a node that lies beside the panel, openings that overlap or cross its boundary") {
  CHECK(plate_mesh(box(2.0, 1.0), {{1.999, 0.5}}, 0.3));
  CHECK_FALSE(plate_mesh(box(2.0, 1.0), {{2.1, 0.5}}, 0.3));
  PlateShape shape = box(2.0, 1.0);
  shape.holes = {rectangle_ring(0.5, 0.3, 0.9, 0.6)};
  CHECK(plate_mesh(shape, {}, 0.3));
  shape.holes.push_back(shape.holes.front());
  CHECK_FALSE(plate_mesh(shape, {}, 0.3));
  shape.holes = {rectangle_ring(1.7, 0.3, 2.3, 0.6)};
  CHECK_FALSE(plate_mesh(shape, {}, 0.3));
}

TEST_CASE("a mesh: a corner of 2.1 degrees is divided, one of 1.9 is not") {
  const auto corner = [](double degrees) {
    const double half = 3.0 * std::tan(0.5 * degrees * M_PI / 180.0);
    return plate_mesh({{{0.0, 0.0}, {3.0, -half}, {3.0, half}}, {}}, {}, 0.2);
  };
  const auto mesh = corner(2.1);
  REQUIRE(mesh);
  CHECK(mesh->least_angle_rad > 2.0 * M_PI / 180.0);
  CHECK(mesh->least_angle_rad <= Approx(2.1 * M_PI / 180.0));
  CHECK_FALSE(corner(1.9));
}

TEST_CASE("a mesh keeps its boundary where an opening nearly touches it, and along slanted sides") {
  PlateShape narrow = box(2.0, 1.0);
  narrow.holes = {{{1.0, 0.004}, {1.4, 0.5}, {0.6, 0.5}}};  // one corner 4 mm from the edge
  const PlateMesh mesh = meshed(narrow, {}, 0.3);
  CHECK(covered_m2(mesh) == Approx(2.0 - 0.5 * 0.8 * 0.496).epsilon(1e-6));
  for (const auto& t : mesh.triangles) {  // none reaches across the opening
    PlatePoint middle;
    for (const int n : t) {
      middle.x_m += mesh.nodes[static_cast<std::size_t>(n)].x_m / 3.0;
      middle.y_m += mesh.nodes[static_cast<std::size_t>(n)].y_m / 3.0;
    }
    CHECK(is_inside(narrow, middle));
  }
  const PlateShape slanted{{{0.1, 0.2}, {3.3, 0.5}, {2.9, 1.7}, {0.7, 2.1}}, {}};
  const PlateMesh oblique = meshed(slanted, {}, 0.1);
  CHECK(covered_m2(oblique) == Approx(area_m2(slanted)).epsilon(1e-6));
  CHECK(oblique.least_angle_rad > 20.0 * M_PI / 180.0);
}

TEST_CASE("the reaction of an edge: of a line without length or end, and beside the panel, there is none") {
  const PlateShape shape = box(3.0, 2.0);
  const PlateMesh mesh = meshed(shape, {}, 0.3);
  CHECK(edge_shares(mesh, shape, {{{0.0, 0.0}, {3.0, 0.0}}}, {1.5, 0.0}));
  CHECK_FALSE(edge_shares(mesh, shape, {{{0.0, 0.0}, {0.0, 0.0}}}, {0.0, 0.0}));
  CHECK_FALSE(edge_shares(mesh, shape, {{{0.0, 0.0}, {without_end, 0.0}}}, {1.5, 0.0}));
  CHECK_FALSE(edge_shares(mesh, shape, {{{0.0, 0.0}, {no_number, 0.0}}}, {1.5, 0.0}));
  CHECK_FALSE(edge_shares(mesh, shape, {{{0.0, -1.0}, {3.0, -1.0}}}, {1.5, -1.0}));
}

TEST_CASE("the larger of two readings is kept, and what is no number before any") {
  PanelMost most;
  most.look(-1.0, {1.0, 0.0});
  CHECK(most.value == 0.0);
  most.look(2.0, {2.0, 0.0});
  most.look(1.9, {3.0, 0.0});
  CHECK(most.value == 2.0);
  CHECK(most.at.x_m == 2.0);
  most.look(2.1, {4.0, 0.0});
  CHECK(most.at.x_m == 4.0);
  most.look(no_number, {5.0, 0.0});
  most.look(without_end, {6.0, 0.0});
  CHECK(std::isnan(most.value));
  CHECK(most.at.x_m == 5.0);
}
