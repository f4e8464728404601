// The edge about which a piece is turned must be an edge of it, all the way, and the lowest there is.

#include "demands/edge_on_ground.hpp"

#include <catch2/catch.hpp>

#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

piece::Body panel() {  // 3.0 x 2.4 x 0.15 m
  plan::Plan plan;
  plan::Solid solid;
  solid.name = "panel";
  solid.size = {3.0 * m, 2.4 * m, 0.15 * m};
  plan.piece.solids = {solid};
  const auto made = piece::make_body(plan);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&made)) FAIL(show(faults->front()));
  return std::get<piece::Body>(made);
}

std::string refused(const Position& from, const Position& to, double from_deg = 0.0, double to_deg = 90.0) {
  const piece::Body body = panel();
  const auto frame = assessed(demands::frame_about_edge({from, to}, body.centroid));
  const auto why = demands::edge_refusal(body, frame, from_deg * deg, to_deg * deg);
  return why ? why->why : "";
}

Position at(double x_m, double y_m, double z_m = 0.0) { return {x_m * m, y_m * m, z_m * m}; }

const std::string no_edge = "the two points do not lie on an edge of the piece";
const std::string below = "the piece reaches below the edge about which it is to turn";

}  // namespace

TEST_CASE("the lowest edge of a panel is one, whole or a part of it, to a millimetre at its ends") {
  CHECK(refused(at(0.0, 0.0), at(0.0, 2.4)).empty());
  CHECK(refused(at(0.0, 0.0), at(3.0, 0.0)).empty());
  CHECK(refused(at(0.0, 0.5), at(0.0, 2.0)).empty());
  CHECK(refused(at(0.0, -0.0009), at(0.0, 2.4009)).empty());
}

TEST_CASE("a line that ends beyond the edge at either end is none") {
  CHECK(refused(at(0.0, -0.002), at(0.0, 2.4)) == no_edge);
  CHECK(refused(at(0.0, 0.0), at(0.0, 2.402)) == no_edge);
  CHECK(refused(at(0.0, -0.5), at(0.0, 3.0)) == no_edge);
}

TEST_CASE("a line below the piece is no edge of it, one inside it has some of the piece below") {
  CHECK(refused(at(0.0, 0.0, -0.5), at(0.0, 2.4, -0.5)) == no_edge);
  CHECK(refused(at(0.5, 0.0), at(0.5, 2.4)) == below);
  CHECK(refused(at(0.0, 0.0, 0.15), at(0.0, 2.4, 0.15), 0.0, 45.0) == below);
}
