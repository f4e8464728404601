// Tipping angles on flat ground and on bearers, by hand; what is not assessed.

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/set_down.hpp"

using namespace firstpick;
using namespace firstpick::demands;

namespace {

constexpr Direction up{0.0, 0.0, 1.0};

plan::Solid box(const std::string& name, double x, double y, double z, double at_x = 0.0, bool cut = false) {
  plan::Solid solid;
  solid.name = name;
  solid.size = {x * m, y * m, z * m};
  solid.at = {at_x * m, 0.0 * m, 0.0 * m};
  solid.cut = cut;
  return solid;
}

piece::Body body_of(std::vector<plan::Solid> solids) {
  plan::Plan plan;
  plan.piece.solids = std::move(solids);
  const auto made = piece::make_body(plan);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&made)) FAIL(show(faults->front()));
  return std::get<piece::Body>(made);
}

plan::Bearer across(double x, double width, double length = 2.0) {
  plan::Bearer bearer;
  bearer.along = {Position{x * m, 0.0 * m, 0.0 * m}, Position{x * m, length * m, 0.0 * m}};
  bearer.width = width * m;
  return bearer;
}

Standing stands(const piece::Body& body, const std::vector<plan::Bearer>& bearers, const Position& centre,
                const Direction& vertical = up) {
  const auto found = set_down(body, bearers, centre, vertical);
  if (const auto* gap = std::get_if<NotAssessed>(&found)) FAIL(gap->why);
  return std::get<Standing>(found);
}

double degrees(double rise, double run) { return std::atan2(rise, run) * 180.0 / M_PI; }

}  // namespace

TEST_CASE("a box on flat ground tips over its nearest side, whichever way up it stands") {
  const piece::Body body = body_of({box("panel", 3.0, 2.0, 0.2)});
  const Standing flat = stands(body, {}, body.centroid);
  CHECK(in(m, flat.margin) == Approx(1.0));
  CHECK(in(m, flat.height) == Approx(0.1));
  CHECK(in(deg, flat.tipping) == Approx(degrees(1.0, 0.1)));
  const Standing on_edge = stands(body, {}, body.centroid, {1.0, 0.0, 0.0});
  CHECK(in(deg, on_edge.tipping) == Approx(degrees(0.1, 1.5)));
  const Standing turned_over = stands(body, {}, body.centroid, {0.0, 0.0, -1.0});
  CHECK(in(deg, turned_over.tipping) == Approx(degrees(1.0, 0.1)));
}

TEST_CASE("a centre of gravity over the side or outside is zero or negative") {
  const piece::Body body = body_of({box("panel", 3.0, 2.0, 0.2)});
  CHECK(in(m, stands(body, {}, {3.0 * m, 1.0 * m, 0.1 * m}).margin) == Approx(0.0).margin(1e-12));
  CHECK(in(m, stands(body, {}, {3.2 * m, 1.0 * m, 0.1 * m}).margin) == Approx(-0.2));
  CHECK(stands(body, {}, {3.2 * m, 1.0 * m, 0.1 * m}).tipping < Angle{});
}

TEST_CASE("on two bearers it stands between their outer edges, and shares its weight by the lever law") {
  const piece::Body body = body_of({box("panel", 4.0, 2.0, 0.2)});
  const Position centre{1.8 * m, 1.0 * m, 0.1 * m};
  const Standing standing = stands(body, {across(0.8, 0.1), across(3.2, 0.1)}, centre);
  CHECK(in(m, standing.margin) == Approx(1.0));  // the sides along the panel are nearer
  REQUIRE(standing.shares);
  CHECK((*standing.shares)[1] == Approx(1.0 / 2.4));
  CHECK((*standing.shares)[0] == Approx(1.4 / 2.4));
  const Standing near = stands(body, {across(1.5, 0.1), across(3.2, 0.1)}, centre);
  CHECK(in(m, near.margin) == Approx(0.35));
  const Standing outside = stands(body, {across(2.0, 0.1), across(3.2, 0.1)}, centre);
  CHECK(in(m, outside.margin) == Approx(-0.15));
}

TEST_CASE("a bearer that sticks out carries only where the piece is, a short one only where it is") {
  const piece::Body body = body_of({box("panel", 4.0, 2.0, 0.2)});
  CHECK(in(m, stands(body, {across(0.5, 0.1, 5.0), across(3.5, 0.1, 5.0)}, body.centroid).margin) == Approx(1.0));
  CHECK(in(m, stands(body, {across(0.5, 0.1, 1.5), across(3.5, 0.1, 1.5)}, body.centroid).margin) == Approx(0.5));
}

TEST_CASE("over an opening a bearer carries nothing, nor does ground under a leg that is not there") {
  const piece::Body bench = body_of({box("seat", 3.0, 1.0, 1.0), box("gap", 2.0, 1.0, 0.6, 0.5, true)});
  CHECK(in(m, stands(bench, {}, bench.centroid).margin) == Approx(0.5));
  CHECK_FALSE(is_assessed(set_down(bench, {across(1.5, 0.1)}, bench.centroid, up)));
}

TEST_CASE("one bearer under the centre of gravity holds as far as it is wide") {
  const piece::Body body = body_of({box("panel", 3.0, 2.0, 0.2)});
  CHECK(in(m, stands(body, {across(1.5, 0.2)}, body.centroid).margin) == Approx(0.1));
}

TEST_CASE("not assessed: a bearer beside the piece, no flat face below, a round side below") {
  const piece::Body body = body_of({box("panel", 3.0, 2.0, 0.2)});
  CHECK_FALSE(is_assessed(set_down(body, {across(5.0, 0.1)}, body.centroid, up)));
  CHECK_FALSE(is_assessed(set_down(body, {plan::Bearer{}}, body.centroid, up)));
  const double s = std::sqrt(0.5);
  CHECK_FALSE(is_assessed(set_down(body, {}, body.centroid, {s, 0.0, s})));
  plan::Solid pipe;
  pipe.name = "pipe";
  pipe.shape = plan::Shape::cylinder;
  pipe.diameter = 1.0 * m;
  pipe.length = 2.0 * m;
  const piece::Body round = body_of({pipe});
  CHECK_FALSE(is_assessed(set_down(round, {}, round.centroid, {1.0, 0.0, 0.0})));
  const Standing upright = stands(round, {}, round.centroid);
  CHECK(in(m, upright.margin) == Approx(0.5).epsilon(2e-3));  // chords lie inside the circle
  CHECK(upright.margin <= 0.5 * m);
}
