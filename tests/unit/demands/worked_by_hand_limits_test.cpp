// Numbers that a change of one sign or constant would move, each worked out by hand: the line method of a
// handbook, trees with two beams, bearers not quite parallel, means of stresses, holds of a panel, singular
// equations.

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "demands/handbook_panel.hpp"
#include "demands/linear_equations.hpp"
#include "demands/panel_estimate.hpp"
#include "demands/panel_flat.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/plate_six_corners.hpp"
#include "demands/rope_equilibrium.hpp"
#include "demands/set_down.hpp"
#include "demands/stepped_panel_bending.hpp"
#include "demands/stepped_plate.hpp"
#include "demands/tree_distributions.hpp"
#include "support/assessed.hpp"
#include "support/hung_pieces.hpp"
#include "support/plates.hpp"
#include "support/stepped_panels.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

PlateMesh two_triangles_from(double x, double y, double wide, double high) {
  PlateMesh mesh;
  mesh.nodes = {{x, y}, {x + wide, y}, {x + wide, y + high}, {x, y + high}};
  mesh.triangles = {{0, 1, 2}, {0, 2, 3}};
  return mesh;
}

piece::Body body_made_of(plan::Solid solid) {
  plan::Plan plan;
  plan.piece.solids = {std::move(solid)};
  const auto made = piece::make_body(plan);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&made)) FAIL(show(faults->front()));
  return std::get<piece::Body>(made);
}

plan::Bearer bearer_from(const Position& from, const Position& to, double width_m) {
  plan::Bearer made;
  made.along = {from, to};
  made.width = width_m * m;
  return made;
}

HungLeg leg_of(std::string to, Position at, double length_m) {
  return {std::move(to), at, length_m * m, does_not_stretch};
}

}  // namespace

// A beam on two picks at c from its ends bends alike over a pick and in the middle where c^2/2 = l^2/8 - l
// c/2, at 0.2071 l: 0.02145 w l^2. The PCI handbook (from memory) has half of it, 0.0107, for a strip of half
// the panel of four picks, twice of it, 0.0429, for a panel lifted at one edge.
TEST_CASE("the handbook's coefficients of four picks, of eight, and of a panel lifted at its edge") {
  const double c = 0.2071, over_pick = 0.5 * c * c, between = 0.125 - 0.5 * c;
  REQUIRE(over_pick == Approx(between).margin(1e-5));
  const Stress w = 1.0 * Pa;
  const Length a = 8.0 * m, b = 3.0 * m, wide = 100.0 * m;
  const HandbookPanel four = four_picks(w, a, b, wide);
  CHECK(four.along.moment.value() / (8.0 * 8.0 * 3.0) == Approx(0.5 * over_pick).margin(1e-5));
  CHECK(four.along.moment.value() / (8.0 * 8.0 * 3.0) == Approx(0.0107).margin(0.00005));
  CHECK(four.across.moment.value() / (8.0 * 3.0 * 3.0) == Approx(0.0107).margin(0.00005));
  CHECK(in(m, four.along.width) == Approx(1.5));
  CHECK(in(m, four.across.width) == Approx(4.0));
  CHECK(in(m, four_picks(w, a, b, 1.2 * m).across.width) == Approx(1.2));
  const HandbookPanel eight = eight_picks(w, a, b, wide);
  CHECK(eight.along.moment.value() / (8.0 * 8.0 * 3.0) == Approx(0.0027).margin(0.00005));
  CHECK(eight.across.moment.value() / (8.0 * 3.0 * 3.0) == Approx(0.0054).margin(0.00005));
  const StripMoment edge = edge_lift(w, a, b);
  CHECK(edge.moment.value() / (8.0 * 8.0 * 3.0) == Approx(0.0429).margin(0.00005));
  CHECK(in(m, edge.width) == Approx(3.0));
  // The picks of the one method put where the other has them give the same.
  const HandbookPanel placed = four_picks_at(w, a, b, 0.2071 * a, 0.2071 * b, wide);
  CHECK(placed.along.moment.value() == Approx(four.along.moment.value()).epsilon(1e-3));
}

TEST_CASE("what further meshes would still change is the sum of a geometric series") {
  double sum = 0.0;
  for (double next = 0.02 * 0.7; next > 1e-18; next *= 0.7) sum += next;
  CHECK(left_after(0.02, 0.7) == Approx(sum).epsilon(1e-12));
  CHECK(left_after(0.02, 0.5) == Approx(0.02));
}

TEST_CASE("equations without their first unknown leave no unknown that is a number") {
  LinearEquations<3> equations;
  equations.clear(3);
  const double left[3][2] = {{1.0, 2.0}, {3.0, -1.0}, {2.0, 5.0}};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 2; ++j) equations(i, j + 1) = left[i][j];
  for (std::size_t i = 0; i < 3; ++i) equations.right(i) = 1.0;
  equations.solve();
  for (std::size_t i = 0; i < 3; ++i) {
    CAPTURE(i);
    CHECK_FALSE(std::isfinite(equations.right(i)));
  }
}

TEST_CASE("a rope that names no first span starts with the first") {
  RopeSystem<1> system;
  system.load = {1.0};
  system.spans[system.span_count++] = {{in_space, {}}, {0, {0.0, 0.0, 0.25}}};
  Rope rope;
  rope.span_count = 1, rope.length = 1.0;
  system.ropes[system.rope_count++] = rope;
  const Rest<1> rest =
      come_to_rest<1>(system, {{{{0.0, 0.0, -1.0}, {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}}}}});
  REQUIRE(rest.ending == Ending::at_rest);
  CHECK(rest.tension[0] == Approx(1.0).epsilon(1e-12));
  CHECK(rest.poses[0].origin.z == Approx(-1.25).epsilon(1e-12));
}

// On one body there are six equations of equilibrium: of n legs n - 6 are slack, in n over 6 ways.
TEST_CASE("18 legs have 18564 ways to share a load, which are looked at, 19 have 27132, which are too many") {
  const auto legs_round = [](int count) {
    HungPiece piece;
    Hanging hanging;
    hanging.up = {0.0, 0.0, 1.0};
    hanging.hook = at_m(0.0, 0.0, 1.0);
    for (int i = 0; i < count; ++i) {
      const double turn = 2.0 * M_PI * i / count;
      const Position lower = at_m(std::cos(turn), std::sin(turn), 0.0);
      const Position upper = lower + at_m(0.3 * std::cos(2.0 * turn + 0.4), 0.3 * std::sin(3.0 * turn), 1.0);
      piece.legs.push_back(leg_of("A" + std::to_string(i + 1), lower, 1.0));
      hanging.spans.push_back({upper, lower});
    }
    hanging.legs.resize(piece.legs.size());
    piece.loads = {{at_m(0.0, 0.0, -0.5), 100.0 * kN}};
    return tree_distributions(piece, hanging);
  };
  const auto found = assessed(legs_round(18));
  REQUIRE_FALSE(found.empty());
  for (const std::size_t one : {std::size_t{0}, found.size() - 1}) {
    Force upright{};
    for (const LegForce& leg : found[one].legs) upright += leg.on_insert.z;
    CHECK(in(kN, upright) == Approx(100.0).epsilon(1e-6));
  }
  CHECK(why_not(legs_round(19)) == "the rigging leaves more ways to share the load open than can be listed");
}

TEST_CASE("a beam below a beam: each weighs on what holds it, and on nothing below") {
  HungPiece piece;
  piece.carriers = {{"upper", 8.0 * kN, at_m(0, 0, 0), false}, {"lower", 5.0 * kN, at_m(0, 0, 0), false}};
  const auto hung_on = [](HungLeg leg, std::size_t carrier, double x_m) {
    leg.from_carrier = carrier;
    leg.from_at = at_m(x_m, 0, -0.1);
    return leg;
  };
  const auto holds = [](HungLeg leg, std::size_t carrier) {
    leg.to_carrier = carrier;
    return leg;
  };
  for (const double x : {-1.5, 1.5}) piece.legs.push_back(holds(leg_of("upper", at_m(x, 0, 0.1), 3.0), 0));
  for (const double x : {-1.5, 1.5})
    piece.legs.push_back(hung_on(holds(leg_of("lower", at_m(x, 0, 0.1), 1.0), 1), 0, x));
  for (const double x : {-1.5, 1.5}) piece.legs.push_back(hung_on(leg_of("A", at_m(x, 0, 0), 1.2), 1, x));
  piece.loads = {{at_m(0, 0, -0.5), 100.0 * kN}};
  const auto shared = assessed(tree_distributions(piece, hung(piece)));
  REQUIRE(shared.size() == 1);
  const auto tension_kN = [&](std::size_t leg) { return in(kN, shared[0].legs.at(leg).tension); };
  CHECK(tension_kN(5) == Approx(50.0).epsilon(1e-6));
  CHECK(tension_kN(3) == Approx(52.5).epsilon(1e-6));
  CHECK(tension_kN(1) == Approx(113.0 / std::sqrt(3.0)).epsilon(1e-6));  // slings at 60 degrees
}

TEST_CASE("of two bearers that are not quite parallel the second takes its share by its middle") {
  plan::Solid slab;
  slab.name = "slab";
  slab.size = {4.0 * m, 2.0 * m, 0.2 * m};
  const piece::Body body = body_made_of(slab);
  const auto second_share = [&](const plan::Bearer& first, const plan::Bearer& second) {
    const auto standing = assessed(set_down(body, {first, second}, at_m(1.8, 0.9, 0.1), {0.0, 0.0, 1.0}));
    REQUIRE(standing.shares);
    return (*standing.shares)[1];
  };
  const plan::Bearer across = bearer_from(at_m(0.8, 0, 0), at_m(0.8, 2, 0), 0.1);
  const double by_x = second_share(across, bearer_from(at_m(3.2, 0, 0), at_m(3.2015, 2, 0), 0.1));
  CHECK(by_x == Approx(1.0 / 2.40075).epsilon(1e-9));
  const plan::Bearer along = bearer_from(at_m(0, 0.2, 0), at_m(4, 0.2, 0), 0.1);
  const double by_y = second_share(along, bearer_from(at_m(0, 1.8, 0), at_m(4, 1.803, 0), 0.1));
  CHECK(by_y == Approx(0.7 / 1.6015).epsilon(1e-9));
}

TEST_CASE(
    "a bearer that sticks out past a slanted side of the piece holds it up to that side and no farther") {
  plan::Solid prism;
  prism.name = "prism";
  prism.shape = plan::Shape::prism;
  prism.length = 0.2 * m;
  prism.outline = {
      {1.0 * m, 1.0 * m}, {5.0 * m, 1.0 * m}, {3.0 * m, 3.0 * m}, {1.0 * m, 3.0 * m}};  // x + y <= 6 m
  const std::vector<plan::Bearer> bearers{bearer_from(at_m(1.5, 0.5, 0), at_m(1.5, 3.5, 0), 0.2),
                                          bearer_from(at_m(4.0, 0.5, 0), at_m(4.0, 2.6, 0), 0.4)};
  const auto standing =
      assessed(set_down(body_made_of(prism), bearers, at_m(3.7, 2.0, 0.1), {0.0, 0.0, 1.0}));
  CHECK(in(m, standing.margin) == Approx((6.0 - 5.7) / std::sqrt(2.0)));
}

TEST_CASE("a panel is held across the line between two far corners, wherever it lies") {
  CHECK(SixCorneredMesh(two_triangles_from(100.0, 0.0, 1.0, 4.0), 0.2).holds() == std::array{0, 1, 2 * 2});
  CHECK(SixCorneredMesh(two_triangles_from(0.0, 100.0, 4.0, 1.0), 0.2).holds() ==
        std::array{0, 1, 2 * 2 + 1});
}

TEST_CASE("what is out of balance along a panel is found at its holds, and nothing of what is in balance") {
  const MembraneSolver solver(two_triangles_from(0.0, 0.0, 4.0, 1.0), 0.2);
  const auto held = [&](const std::vector<MembraneNodeForce>& forces) {
    const auto solution = solver.solve(0.0, 0.0, forces);
    REQUIRE(solution);
    return solution->held();
  };
  CHECK(held({{0, 5.0, 0.0}}) == Approx(5.0));
  CHECK(held({{3, 0.0, -5.0}}) == Approx(5.0));
  CHECK(held({{0, -5.0, 0.0}, {1, 5.0, 0.0}}) == Approx(0.0).margin(1e-9));
}

// Stresses are linear over a triangle: a mean over what lies about a place in it is the stress there.
TEST_CASE("means over a disc and a line within one triangle are the stress at their middle") {
  const PlateMesh mesh = meshed({rectangle_ring(0.0, 0.0, 2.0, 1.0), {}}, {{0.5, 0.5}, {1.5, 0.5}}, 0.25);
  const SteppedSolver solver(mesh, 0.2, std::vector<std::size_t>(mesh.triangles.size(), 0), {{-0.05, 0.05}});
  std::vector<PlateNodeLoad> loads;
  for (const int node : mesh.focus_nodes) loads.push_back({3 * node, -1000.0});
  const auto solution = solver.solve({1000.0}, loads, {});
  REQUIRE(solution);
  for (const std::size_t t : {std::size_t{0}, mesh.triangles.size() / 2}) {
    const auto node = [&](std::size_t i) {
      return mesh.nodes[static_cast<std::size_t>(mesh.triangles[t][i])];
    };
    const PlatePoint a = node(0), b = node(1), c = node(2);
    const PlatePoint middle{(a.x_m + b.x_m + c.x_m) / 3.0, (a.y_m + b.y_m + c.y_m) / 3.0};
    const double within =
        0.5 * std::min({distance_m(middle, a, b), distance_m(middle, b, c), distance_m(middle, c, a)});
    for (const PlateFace face : {PlateFace::top, PlateFace::bottom}) {
      const auto here = solution->stress(middle, face),
                 over_disc = solution->patch_stress(middle, within, 0, face),
                 along = solution->strip_stress(middle, true, within, 0, face);
      REQUIRE((here && over_disc && along));
      REQUIRE(std::abs((*here)[0]) > 1.0);
      for (std::size_t i = 0; i < 3; ++i) {
        CHECK((*over_disc)[i] == Approx((*here)[i]).epsilon(1e-9));
        CHECK((*along)[i] == Approx((*here)[i]).epsilon(1e-9));
      }
    }
  }
}

// 2 x 1 m under 5 kN, strips of 0.5 m: the side of the panel runs along the border of what the strips of the pick at
// 0.25 m from it stand for. A force on that border that is no pick makes a peak there, which is not read.
TEST_CASE("an estimate reads no tension of the top within the strips of a pick, their borders with them") {
  Panel panel;
  panel.outer = {{0.0 * m, 0.0 * m}, {2.0 * m, 0.0 * m}, {2.0 * m, 1.0 * m}, {0.0 * m, 1.0 * m}};
  panel.poisson = Ratio{0.2};
  panel.patch = 0.05 * m;
  panel.strip = 0.5 * m;
  PanelLoad load;
  load.pressure = 2500.0 * Pa;
  load.forces = {{{1.0 * m, 0.25 * m}, 500.0 * newton, {}, {}, {}, true},
                 {{1.0 * m, 0.0 * m}, 2000.0 * newton, {}, {}, {}, false},
                 {{1.0 * m, 0.95 * m}, 2500.0 * newton, {}, {}, {}, true}};
  const auto estimate = PanelEstimate::of(panel);
  REQUIRE(estimate);
  const auto top_at_y_m = [&] { return in(m, assessed(estimate->bending({load})).front().top_tension.at.y); };
  CHECK(top_at_y_m() > 0.2);
  load.forces[0].at.y = std::nextafter(0.25, 1.0) * m;
  CHECK(top_at_y_m() == Approx(0.0).margin(1e-9));
}

TEST_CASE("a pick on the edge of a stepped panel may be a micrometre beside it, and no more") {
  const auto why = [](double beside_m) {
    SteppedPanel panel = panel_of_two_halves();
    SteppedLoad load;
    load.pressure = {2500.0 * Pa, 5000.0 * Pa};
    load.forces = {
        {{-beside_m * m, 0.5 * m}, 1.0 * newton, {}, {}, {}, true}};  // far from balance: not computed
    panel.loads = {load};
    return why_not(stepped_panel_bending(panel));
  };
  CHECK(why(1e-6) == "the bending of the stepped panel could not be computed to 2 %");
  CHECK(why(std::nextafter(1e-6, 1.0)) == "a force acts beside the panel or in an opening");
}
