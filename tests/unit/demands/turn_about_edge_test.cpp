// Turning about an edge: the closed form F = W (c cos t - z sin t) / (p cos t - q sin t) at every angle, balance of forces
// and moments, and what is refused. Computed for the purpose: no publication.

#include <cmath>

#include "unit/demands/turning_pieces.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

// Far end, 1.5 m legs on inserts 1.2 m apart: the hook stands sqrt(1.5^2 - 0.6^2) plumb over their line.
double hook_over_line_m() { return std::sqrt(1.5 * 1.5 - 0.6 * 0.6); }

}  // namespace

TEST_CASE("flat, an edge and a far pick carry half each") {
  const TurnPose pose = posed(panel_on_edge(), 0.0 * deg);
  CHECK(in(kN, pose.main_pull) == Approx(12.5).epsilon(1e-12));
  CHECK(in(kN, pose.edge.upward) == Approx(12.5).epsilon(1e-12));
  CHECK(in(m, pose.hook.x) == Approx(3.0).epsilon(1e-12));
  CHECK(in(m, pose.hook.z) == Approx(0.075 + hook_over_line_m()).epsilon(1e-12));
  CHECK(in(m, pose.edge.at.y) == Approx(1.2).epsilon(1e-12));
  REQUIRE(pose.sharings.size() == 1);
  CHECK(in(kN, pose.sharings[0].legs[0].tension) == Approx(6.25 * 1.5 / hook_over_line_m()).epsilon(1e-12));
}

TEST_CASE("the hook's pull is the closed form at every angle up to the balance, then nothing") {
  for (const double pick_z : {0.02, 0.075, 0.13}) {
    TurnedPiece piece = panel_on_edge();
    for (HungLeg& leg : piece.legs) leg.at.z = pick_z * m;
    for (double t = 0.0; t <= 85.0; t += 0.5) {
      const double a = t * M_PI / 180.0;
      const double x = 1.5 * std::cos(a) - 0.075 * std::sin(a), hook = 3.0 * std::cos(a) - pick_z * std::sin(a);
      const TurnPose pose = posed(piece, t * deg);
      CAPTURE(pick_z, t);
      CHECK(in(kN, pose.main_pull) == Approx(25.0 * x / hook).epsilon(1e-9));
      CHECK(unbalanced(piece, pose, pose.sharings.front()) < 1e-9);
    }
  }
  const TurnedPiece piece = panel_on_edge();
  CHECK(in(deg, balance_angle(piece)) == Approx(std::atan2(1.5, 0.075) * 180.0 / M_PI).epsilon(1e-12));
  for (const double t : {87.2, 88.0, 90.0}) {
    const TurnPose pose = posed(piece, t * deg);
    CAPTURE(t);
    CHECK(pose.slack);
    CHECK(pose.main_pull == Force{});
    CHECK(in(kN, pose.edge.upward) == Approx(25.0));
  }
}

TEST_CASE("lowering onto the other face, past a right angle, mirrors the way up") {
  const TurnedPiece up = panel_on_edge();
  TurnedPiece down = up;  // about the upper bottom corner, which is the lower one when it has passed 90 degrees
  down.frame.on_axis.z = 0.15 * m;
  down.let_down = true;
  for (double t = 95.0; t <= 180.0; t += 5.0) {
    CAPTURE(t);
    CHECK(in(kN, posed(down, t * deg).main_pull) == Approx(in(kN, posed(up, (180.0 - t) * deg).main_pull)).epsilon(1e-9));
  }
}

TEST_CASE("a hook beside the middle of the edge moves the reaction, until it leaves the edge") {
  TurnedPiece piece = panel_on_edge();
  for (HungLeg& leg : piece.legs) leg.at.y = leg.at.y + 0.3 * m;
  const TurnPose pose = posed(piece, 0.0 * deg);
  CHECK(in(m, pose.edge.at.y) == Approx(0.9).epsilon(1e-9));
  CHECK(unbalanced(piece, pose, pose.sharings.front()) < 1e-9);
  piece.frame.on_axis.y = 1.0 * m;
  piece.frame.reach = 1.4 * m;
  CHECK_FALSE(is_assessed(turn_pose(piece, 20.0 * deg)));
}

TEST_CASE("picks not beyond the centre of gravity lift the piece off its edge: not assessed") {
  TurnedPiece piece = panel_on_edge();
  for (HungLeg& leg : piece.legs) leg.at.x = 1.5 * m;
  CHECK(is_assessed(turn_pose(piece, 0.0 * deg)));  // just there: the hook carries all
  for (HungLeg& leg : piece.legs) leg.at.x = 1.499 * m;
  CHECK_FALSE(is_assessed(turn_pose(piece, 0.0 * deg)));
}

TEST_CASE("loads that are no loads are not assessed") {
  for (const double load : {0.0, -1.0, std::nan(""), double{INFINITY}}) {
    TurnedPiece piece = panel_on_edge();
    piece.loads.front().force = load * kN;
    CAPTURE(load);
    CHECK_FALSE(is_assessed(turn_pose(piece, 30.0 * deg)));
  }
  TurnedPiece piece = panel_on_edge();
  piece.legs.front().length = std::nan("") * m;
  CHECK_FALSE(is_assessed(turn_pose(piece, 30.0 * deg)));
  piece.legs.clear();
  CHECK_FALSE(is_assessed(turn_pose(piece, 30.0 * deg)));
}

TEST_CASE("an edge that is not level, or has no side to rise, is not assessed") {
  const Position centre{1.5 * m, 1.2 * m, 0.1 * m};
  const Position a{0.0 * m, 0.0 * m, 0.0 * m};
  CHECK_FALSE(is_assessed(frame_about_edge({a, {0.0 * m, 2.0 * m, 0.1 * m}}, centre)));
  CHECK_FALSE(is_assessed(frame_about_edge({a, a}, centre)));
  CHECK_FALSE(is_assessed(frame_about_edge({Position{1.5 * m, 0.0 * m, 0.0 * m}, {1.5 * m, 2.0 * m, 0.0 * m}}, centre)));
}

TEST_CASE("what stops a turn has its reason: loads, method, edge, the places of hooks and picks") {
  const auto why = [](const auto& outcome) {
    REQUIRE_FALSE(is_assessed(outcome));
    return std::get<NotAssessed>(outcome).why;
  };
  TurnedPiece piece = panel_on_edge();
  piece.loads.front().force = -1.0 * kN;
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "a load on the piece is not a finite force downwards at a known place");
  piece.loads.front().force = 25.0 * kN;
  piece.loads.front().at.z = std::nan("") * m;
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "a load on the piece is not a finite force downwards at a known place");
  piece.loads.clear();
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "the piece has no weight");
  piece = panel_on_edge();
  piece.method = static_cast<plan::TurnMethod>(99);
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "this way to turn a piece is not computed");
  piece = panel_on_edge();
  piece.frame.on_axis.y = 1.5 * m;  // hook and weight stand at y = 1.2 m, off the end of an edge from 1.5 m on
  CHECK(why(turn_pose(piece, 20.0 * deg)) ==
        "the piece would roll off the end of its edge: hook and centre of gravity are not in line");
  // The edge is 2.4 m long: all stands 0.1 m before and behind either end of it.
  for (const double outside : {1.3, -1.3}) {
    piece.frame.on_axis.y = outside * m;
    CHECK(why(turn_pose(piece, 20.0 * deg)) ==
          "the piece would roll off the end of its edge: hook and centre of gravity are not in line");
  }
  for (const double inside : {1.1, -1.1}) {
    piece.frame.on_axis.y = inside * m;
    CHECK(in(m, posed(piece, 20.0 * deg).edge.at.y) == Approx(1.2));
  }
  piece = panel_on_edge();
  piece.legs.resize(1);
  piece.legs.front().at = {1.5 * m, 0.6 * m, 0.075 * m};  // plumb beside the centre of gravity: the hook takes all
  CHECK(why(turn_pose(piece, 0.0 * deg)) == "the piece lifts off its edge and swings sideways");
  piece.legs.clear();
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "a rigging has no legs, or more than 16");
  piece = panel_on_edge();
  piece.legs.push_back(turned_leg("E3", 3.0, 1.2, 0.075, 1.5));
  piece.equalised = {{0, 1}};
  CHECK(why(turn_pose(piece, 30.0 * deg)) ==
        "legs that run over a sheave are computed in a turn only where they are the only two");
  piece.legs.pop_back();
  for (HungLeg& leg : piece.legs) leg.length = 0.6 * m;  // 1.2 m apart: half of that is not more than half of the way
  CHECK(why(turn_pose(piece, 30.0 * deg)) == "the two equalised legs are too short to meet");
  for (HungLeg& leg : piece.legs) leg.length = 0.601 * m;
  CHECK(is_assessed(turn_pose(piece, 30.0 * deg)));
  piece.equalised.clear();
  for (HungLeg& leg : piece.legs) leg.length = 0.5 * m;
  CHECK(why(turn_pose(piece, 30.0 * deg)) ==
        "no place was found at which the legs meet over the piece as it is turned");

  const Position centre{1.5 * m, 1.2 * m, 0.1 * m}, a{0.0 * m, 0.0 * m, 0.0 * m};
  CHECK(why(frame_about_edge({a, {0.0 * m, 2.0 * m, 0.1 * m}}, centre)) == "the edge is not level as cast");
  CHECK(why(frame_about_edge({a, a}, centre)) == "the two points of the edge are the same point");
  CHECK(why(frame_about_edge({a, {0.0 * m, double{INFINITY} * m, 0.0 * m}}, centre)) ==
        "the two points of the edge are the same point");
  CHECK(why(frame_about_edge({Position{1.5 * m, 0.0 * m, 0.0 * m}, {1.5 * m, 2.0 * m, 0.0 * m}}, centre)) ==
        "the edge lies plumb under the centre of gravity, neither side rises");
  CHECK(why(frame_between(a, {0.0 * m, 0.0 * m, 1.0 * m})) ==
        "the picks of the two hooks stand over each other as cast");
}
