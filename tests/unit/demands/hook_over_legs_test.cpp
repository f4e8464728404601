// Where the hook stands, and the sharings that balance: one, two, three and four legs, a sheave.

#include <algorithm>
#include <cmath>

#include "demands/pulled_legs.hpp"
#include "unit/demands/turning_pieces.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

constexpr Direction up{0.0, 0.0, 1.0};

HookOverLegs found(const std::vector<HungLeg>& legs, const Direction& direction,
                   const std::vector<std::vector<std::size_t>>& groups = {}) {
  const auto hook = hook_over_legs(legs, groups, direction);
  if (const auto* gap = std::get_if<NotAssessed>(&hook)) FAIL(gap->why);
  return std::get<HookOverLegs>(hook);
}

std::vector<HungLeg> four_legs() {
  return {turned_leg("A", 0, 0, 0, 2.5), turned_leg("B", 3, 0, 0, 2.5), turned_leg("C", 3, 2, 0, 2.5),
          turned_leg("D", 0, 2, 0, 2.5)};
}

}  // namespace

TEST_CASE("one leg hangs plumb") {
  const HookOverLegs hook = found({turned_leg("A", 1, 2, 3, 1.5)}, up);
  CHECK(in(m, hook.at.z) == Approx(4.5));
  CHECK(hook.shares == std::vector<std::vector<double>>{{1.0}});
}

TEST_CASE("two legs of one length meet over their middle, unequal ones over their plumb plane") {
  const HookOverLegs equal = found({turned_leg("A", 0, 0, 0, 2.5), turned_leg("B", 3, 0, 0, 2.5)}, up);
  CHECK(in(m, equal.at.x) == Approx(1.5));
  CHECK(in(m, equal.at.z) == Approx(2.0));
  CHECK(equal.shares.front()[0] == Approx(1.25 / 2.0));
  const HookOverLegs other = found({turned_leg("A", 0, 0, 0, 2.0), turned_leg("B", 2, 1, 0, 2.6)}, up);
  const double d = std::sqrt(5.0), along = (5.0 + 4.0 - 2.6 * 2.6) / (2.0 * d);
  CHECK(in(m, other.at.x) == Approx(along * 2.0 / d));
  CHECK(in(m, other.at.y) == Approx(along / d));
  CHECK(in(m, other.at.z) == Approx(std::sqrt(4.0 - along * along)));
}

TEST_CASE("four equal legs hang on either diagonal while flat, on sets of three as they turn, on the low pair in the end") {
  const HookOverLegs flat = found(four_legs(), up);
  REQUIRE(flat.shares.size() == 2);
  CHECK(flat.shares[0][1] == 0.0);
  CHECK(flat.shares[1][0] == 0.0);
  for (const double t : {5.0, 20.0, 30.0}) {
    const double a = t * M_PI / 180.0;
    const HookOverLegs turned = found(four_legs(), {std::sin(a), 0.0, std::cos(a)});
    CAPTURE(t);
    CHECK(in(m, turned.at.x) == Approx(1.5));  // all four still tight
    CHECK(turned.shares.size() == 2);  // the foot of the pull lies in two of the four triangles
    for (const auto& shares : turned.shares) CHECK(std::count(shares.begin(), shares.end(), 0.0) == 1);
  }
  const double a = 70.0 * M_PI / 180.0;
  const HookOverLegs late = found(four_legs(), {std::sin(a), 0.0, std::cos(a)});
  REQUIRE(late.shares.size() == 1);
  CHECK(late.shares.front()[1] == 0.0);
  CHECK(late.shares.front()[2] == 0.0);
}

TEST_CASE("every sharing balances the pull, and no leg is longer than it is") {
  for (int turn = 0; turn < 36; ++turn)
    for (const double t : {0.0, 10.0, 40.0, 80.0}) {
      const double a = t * M_PI / 180.0, b = turn * M_PI / 18.0;
      const Direction direction{std::sin(a) * std::cos(b), std::sin(a) * std::sin(b), std::cos(a)};
      auto legs = four_legs();
      legs[1].length = 2.7 * m;
      const HookOverLegs hook = found(legs, direction);
      CAPTURE(turn, t);
      REQUIRE_FALSE(hook.shares.empty());
      for (const HungLeg& leg : legs) CHECK(norm(hook.at - leg.at) <= leg.length * (1.0 + 1e-9));
      for (const auto& shares : hook.shares) {
        Direction left = direction;
        for (std::size_t i = 0; i < legs.size(); ++i) {
          const Position along = hook.at - legs[i].at;
          const Length length = norm(along);
          CHECK(shares[i] >= 0.0);
          left = left - shares[i] * Direction{along.x / length, along.y / length, along.z / length};
        }
        CHECK(norm(left) < 1e-9);
      }
    }
}

TEST_CASE("a rope over a sheave stands on the ellipse of its length, with one tension") {
  const std::vector<HungLeg> legs{turned_leg("A", 0, 0, 0, 2.5), turned_leg("B", 3, 0, 0, 2.5)};
  const HookOverLegs flat = found(legs, up, {{0, 1}});
  CHECK(in(m, flat.at.z) == Approx(2.0));
  const double a = 25.0 * M_PI / 180.0;
  const Direction direction{std::sin(a), 0.0, std::cos(a)};
  const HookOverLegs turned = found(legs, direction, {{0, 1}});
  const Length l1 = norm(turned.at - legs[0].at), l2 = norm(turned.at - legs[1].at);
  CHECK(in(m, l1 + l2) == Approx(5.0));
  const Position u1 = turned.at - legs[0].at, u2 = turned.at - legs[1].at;
  const double t = turned.shares.front()[0];
  CHECK(turned.shares.front()[1] == t);
  CHECK(t * (u1.x / l1 + u2.x / l2).value() == Approx(direction.x).epsilon(1e-9));
  CHECK(t * (u1.z / l1 + u2.z / l2).value() == Approx(direction.z).epsilon(1e-9));
  CHECK_FALSE(is_assessed(hook_over_legs(four_legs(), std::vector<std::vector<std::size_t>>{{0, 1}}, up)));
}

TEST_CASE("legs that cannot meet are not assessed") {
  CHECK_FALSE(is_assessed(hook_over_legs(
      std::vector<HungLeg>{turned_leg("A", 0, 0, 0, 1.0), turned_leg("B", 3, 0, 0, 1.0)}, {}, up)));
  CHECK_FALSE(is_assessed(hook_over_legs({}, {}, up)));
}

TEST_CASE("the legs that pull are named, and pull by their share along their own line") {
  const std::vector<HungLeg> legs = four_legs();
  const HookOverLegs hook = found(legs, up);
  const auto sharings = pulled_legs(legs, hook, 40.0 * kN, up);
  REQUIRE(sharings.size() == 2);
  CHECK(sharings[0].name == "legs A and C only");
  CHECK(sharings[1].name == "legs B and D only");
  const double rise = std::sqrt(2.5 * 2.5 - 1.5 * 1.5 - 1.0) / 2.5;
  for (const auto& sharing : sharings)
    for (std::size_t i = 0; i < 4; ++i) {
      const bool pulls = (i % 2 == 0) == (&sharing == &sharings[0]);
      CHECK(in(kN, sharing.legs[i].tension) == Approx(pulls ? 20.0 / rise : 0.0).margin(1e-9));
      CHECK(std::sin(sharing.legs[i].angle_from_horizontal.value()) == Approx(rise));
    }
  const auto three =
      pulled_legs({legs[0], legs[1], legs[2]}, {hook.at, {{0.2, 0.3, 0.4}, {1.0, 0.0, 0.0}}}, 10.0 * kN, up);
  CHECK(three[0].name == "legs A, B and C only");
  CHECK(three[1].name == "leg A only");
  CHECK(pulled_legs({legs[0]}, {hook.at, {{1.0}}}, 10.0 * kN, up)[0].name.empty());
}

TEST_CASE("two inserts at one place share nothing with each other, each with a third") {
  const auto hook = found({turned_leg("A", -1, 0, 0, 1.5), turned_leg("B", -1, 0, 0, 1.5),
                           turned_leg("C", 1, 0, 0, 1.5)},
                          up);
  CHECK(in(m, hook.at.z) == Approx(std::sqrt(1.25)));
  const double half = 0.5 * 1.5 / std::sqrt(1.25);
  REQUIRE(hook.shares.size() == 2);
  for (const std::size_t i : {0U, 1U}) {
    CHECK(hook.shares[i][i] == Approx(half));
    CHECK(hook.shares[i][1 - i] == 0.0);
    CHECK(hook.shares[i][2] == Approx(half));
  }
}

// Legs of 2 m from the origin and of 1.5 m from (2, 0, 0): (4 + 4 - 2.25)/4 = 1.4375 m along, 1.39053 m high.
// A leg from plumb over the origin has no say in it as long as it reaches there, 1.48960 m.
TEST_CASE("of two inserts over each other neither decides where a third one draws the hook aside") {
  const auto legs = [](double over_m) {
    return std::vector{turned_leg("A", 0, 0, 0, 2.0), turned_leg("B", 0, 0, 1, over_m),
                       turned_leg("C", 2, 0, 0, 1.5)};
  };
  const auto hook = found(legs(1.5), up);
  CHECK(in(m, hook.at.x) == Approx(1.4375));
  CHECK(in(m, hook.at.z) == Approx(std::sqrt(4.0 - 1.4375 * 1.4375)));
  CHECK(in(m, found(legs(1.4897), up).at.x) == Approx(1.4375));
  CHECK(in(m, found(legs(1.488), up).at.x) < 1.437);  // now it does
}

TEST_CASE("three legs that reach two by two meet nowhere: in a line, and on a circle") {
  const auto why = [](const std::vector<HungLeg>& legs) {
    const auto hook = hook_over_legs(legs, {}, up);
    REQUIRE_FALSE(is_assessed(hook));
    return std::get<NotAssessed>(hook).why;
  };
  const std::string nowhere = "no place was found at which the legs meet over the piece as it is turned";
  const auto in_a_line = [](double length) {
    return std::vector{turned_leg("A", -1, 0, 0, length), turned_leg("B", 0, 0, 0, length),
                       turned_leg("C", 1, 0, 0, length)};
  };
  CHECK(why(in_a_line(0.9)) == nowhere);
  CHECK(in(m, found(in_a_line(1.25), up).at.z) == Approx(0.75));
  const auto on_a_circle = [](double length) {
    const double far = std::sqrt(0.75);
    return std::vector{turned_leg("A", 1, 0, 0, length), turned_leg("B", -0.5, far, 0, length),
                       turned_leg("C", -0.5, -far, 0, length)};
  };
  CHECK(why(on_a_circle(0.999)) == nowhere);
  CHECK(in(m, found(on_a_circle(1.001), up).at.z) == Approx(std::sqrt(1.001 * 1.001 - 1.0)));
}
