// Two hooks: the lever law at every angle, balance, and the ends of what can be held. Computed for the purpose.

#include <cmath>

#include "unit/demands/turning_pieces.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

TEST_CASE("two hooks share by the lever law at every angle") {
  const TurnedPiece piece = panel_on_two_hooks();
  for (double t = 0.0; t < 90.0; t += 1.0) {
    const double a = t * M_PI / 180.0, c = std::cos(a), s = std::sin(a);
    const double x = 1.5 * c - 0.075 * s, main = 3.0 * c - 0.075 * s, tail = 0.6 * c - 0.15 * s;
    const TurnPose pose = posed(piece, t * deg);
    CAPTURE(t);
    CHECK(in(kN, pose.main_pull) == Approx(25.0 * (x - tail) / (main - tail)).epsilon(1e-9));
    CHECK(in(kN, pose.tail_pull) == Approx(25.0 * (main - x) / (main - tail)).epsilon(1e-9));
    CHECK(in(deg, pose.sideways) == Approx(0.0).margin(1e-9));
    CHECK(unbalanced(piece, pose, pose.sharings.front()) < 1e-9);
  }
}

TEST_CASE("upright the main hook carries all, and past it the tail is slack") {
  const TurnedPiece piece = panel_on_two_hooks();
  const TurnPose pose = posed(piece, 90.0 * deg);
  CHECK(in(kN, pose.main_pull) == Approx(25.0).epsilon(1e-9));
  CHECK(in(kN, pose.tail_pull) == Approx(0.0).margin(1e-6));
  CHECK_FALSE(is_assessed(turn_pose(piece, 91.0 * deg)));
}

TEST_CASE("a load beside the line of the hooks leans out of their plane") {
  TurnedPiece piece = panel_on_two_hooks();
  piece.loads.front().at.y = 1.25 * m;
  const TurnPose pose = posed(piece, 0.0 * deg);
  const double hook_main = 0.075 + std::sqrt(1.5 * 1.5 - 0.6 * 0.6), hook_tail = 0.15 + std::sqrt(2.0 * 2.0 - 0.5 * 0.5);
  const double share = (1.5 - 0.6) / 2.4, depth = share * hook_main + (1.0 - share) * hook_tail - 0.075;
  CHECK(in(deg, pose.sideways) == Approx(std::atan2(0.05, depth) * 180.0 / M_PI).epsilon(1e-9));
}

TEST_CASE("both hooks on one side of the centre of gravity are not assessed") {
  TurnedPiece piece = panel_on_two_hooks();
  for (HungLeg& leg : piece.tail_legs) leg.at.x = 1.6 * m;
  CHECK_FALSE(is_assessed(turn_pose(piece, 0.0 * deg)));
}

TEST_CASE("off a table the legs carry all of it at every angle") {
  TurnedPiece piece = panel_on_edge();
  piece.method = plan::TurnMethod::table;
  for (const double t : {0.0, 45.0, 80.0, 90.0}) {
    const TurnPose pose = posed(piece, t * deg);
    CHECK(in(kN, pose.main_pull) == Approx(25.0));
    CHECK(pose.edge.upward == Force{});
    CHECK(in(kN, pose.sharings.front().legs.front().tension) ==
          Approx(12.5 * 1.5 / std::sqrt(1.5 * 1.5 - 0.6 * 0.6)).epsilon(1e-9));
  }
}

TEST_CASE("which hook goes slack is said, at the lever's ends and just beyond") {
  const auto pose_at = [](double load_x_m) {
    TurnedPiece piece = panel_on_two_hooks();
    piece.loads.front().at.x = load_x_m * m;
    return turn_pose(piece, 0.0 * deg);
  };
  const auto why = [](const Outcome<TurnPose>& pose) {
    REQUIRE_FALSE(is_assessed(pose));
    return std::get<NotAssessed>(pose).why;
  };
  CHECK(in(kN, std::get<TurnPose>(pose_at(3.0)).main_pull) == Approx(25.0));
  CHECK(in(kN, std::get<TurnPose>(pose_at(0.6)).tail_pull) == Approx(25.0));
  CHECK(why(pose_at(3.001)) == "the tail hook goes slack: the piece swings on the main hook");
  CHECK(why(pose_at(0.599)) == "the main hook goes slack: the piece swings on the tail hook");
  TurnedPiece above = panel_on_two_hooks();
  above.loads.front().at.z = 5.0 * m;
  CHECK(why(turn_pose(above, 0.0 * deg)) ==
        "the centre of gravity lies above the hooks: the piece would roll");
  TurnedPiece over = panel_on_two_hooks();
  for (HungLeg& leg : over.tail_legs) leg.at.x = 3.0 * m;
  CHECK(why(turn_pose(over, 0.0 * deg)) ==
        "the two hooks stand over each other, or have changed sides: their shares are not known");
}

// A third leg in the middle of a pair, as long as it reaches: it may carry all, or the pair does.
TEST_CASE("sharings of two hooks are named by the legs of either where there is more than one way") {
  const auto names = [](const TurnedPiece& piece) {
    std::vector<std::string> all;
    for (const Sharing& sharing : posed(piece, 30.0 * deg).sharings) all.push_back(sharing.name);
    return all;
  };
  using Names = std::vector<std::string>;
  TurnedPiece piece = panel_on_two_hooks();
  CHECK(names(piece) == Names{""});
  piece.legs.push_back(turned_leg("E3", 3.0, 1.2, 0.075, std::sqrt(1.5 * 1.5 - 0.6 * 0.6)));
  CHECK(names(piece) == Names{"leg E3 only", "legs E1 and E2 only"});
  piece.tail_legs.push_back(turned_leg("T3", 0.6, 1.2, 0.15, std::sqrt(2.0 * 2.0 - 0.5 * 0.5)));
  CHECK(names(piece) == Names{"leg E3 only, leg T3 only", "leg E3 only, legs T1 and T2 only",
                              "legs E1 and E2 only, leg T3 only", "legs E1 and E2 only, legs T1 and T2 only"});
  const TurnPose pose = posed(piece, 30.0 * deg);
  for (const Sharing& sharing : pose.sharings) CHECK(unbalanced(piece, pose, sharing) < 1e-9);
  piece.legs.pop_back();
  CHECK(names(piece) == Names{"leg T3 only", "legs T1 and T2 only"});
}
