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

TEST_CASE("each way in which nothing is known of how it stands has its reason") {
  const piece::Body body = body_of({box("panel", 3.0, 2.0, 0.2)});
  const auto why = [](const Outcome<Standing>& standing) {
    REQUIRE_FALSE(is_assessed(standing));
    return std::get<NotAssessed>(standing).why;
  };
  CHECK(why(set_down(body, {plan::Bearer{}}, body.centroid, up)) == "the ends of bearer 1 are not known");
  CHECK(why(set_down(body, {across(1.0, 0.1), plan::Bearer{}}, body.centroid, up)) ==
        "the ends of bearer 2 are not known");
  CHECK(why(set_down(body, {across(1.0, 0.1), across(5.0, 0.1)}, body.centroid, up)) ==
        "bearer 2 is not under the piece");
  plan::Bearer upright = across(1.0, 0.1);
  (*upright.along)[1] = {1.0 * m, 0.0 * m, 2.0 * m};
  CHECK(why(set_down(body, {upright}, body.centroid, up)) ==
        "bearer 1 stands on its end as the piece is set down");
  CHECK(why(set_down(body, {}, {1.5 * m, 1.0 * m, 0.0 * m}, up)) ==
        "the centre of gravity does not lie above what the piece stands on");
  CHECK(why(set_down(body, {}, {std::nan("") * m, 1.0 * m, 0.1 * m}, up)) ==
        "the centre of gravity does not lie above what the piece stands on");
}

TEST_CASE("bearers that are not two, or not side by side, share by no lever") {
  const piece::Body body = body_of({box("panel", 4.0, 2.0, 0.2)});
  CHECK_FALSE(stands(body, {across(0.8, 0.1)}, body.centroid).shares);
  CHECK_FALSE(stands(body, {across(0.8, 0.1), across(2.0, 0.1), across(3.2, 0.1)}, body.centroid).shares);
  plan::Bearer lengthways;
  lengthways.along = {Position{0.0 * m, 1.0 * m, 0.0 * m}, Position{4.0 * m, 1.0 * m, 0.0 * m}};
  lengthways.width = 0.1 * m;
  CHECK_FALSE(stands(body, {across(0.8, 0.1), lengthways}, body.centroid).shares);
  CHECK_FALSE(stands(body, {across(0.8, 0.1), across(0.8, 0.1)}, body.centroid).shares);  // one line
  plan::Bearer short_one = across(3.2, 0.1);  // beside the middle: still its line counts
  short_one.along = {Position{3.2 * m, 0.2 * m, 0.0 * m}, Position{3.2 * m, 0.9 * m, 0.0 * m}};
  const auto shares = stands(body, {across(0.8, 0.1), short_one}, {1.4 * m, 0.5 * m, 0.1 * m}).shares;
  REQUIRE(shares);
  CHECK((*shares)[1] == Approx(0.6 / 2.4));
}

TEST_CASE("a bearer that runs aslant carries where it lies under the piece, as far as it is wide") {
  const piece::Body body = body_of({box("panel", 4.0, 4.0, 0.2)});
  plan::Bearer aslant;  // from corner to corner, 0.2 m wide
  aslant.along = {Position{0.0 * m, 0.0 * m, 0.0 * m}, Position{4.0 * m, 4.0 * m, 0.0 * m}};
  aslant.width = 0.2 * m;
  CHECK(in(m, stands(body, {aslant}, {2.0 * m, 2.0 * m, 0.1 * m}).margin) == Approx(0.1));
  CHECK(in(m, stands(body, {aslant}, {2.0 * m, 2.1 * m, 0.1 * m}).margin) ==
        Approx(0.1 - 0.1 * std::sqrt(0.5)));
}
