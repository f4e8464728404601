// Newton's steps to the balance: whatever they start from, what they call a balance is one.

#include "demands/rope_balance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <catch2/catch.hpp>

#include "support/hung_pieces.hpp"

using namespace firstpick::demands;
using firstpick::norm;
using firstpick::tests::Dice;

namespace {

const std::array<Point, 3> as_cast = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};

// A piece of load 1, its picks anywhere over its load centre, on ropes of about the length to a hook over it.
RopeSystem<1> on_any_ropes(Dice& dice, std::size_t ropes, int kind) {
  RopeSystem<1> system;
  system.load = {1.0};
  const double error = std::pow(10.0, dice.between(-7.0, -1.0));
  for (std::size_t r = 0; r < ropes; ++r) {
    const Point pick{dice.between(-0.5, 0.5), dice.between(-0.4, 0.4), dice.between(-0.1, 0.3)};
    const double length =
        norm(Point{-pick.x, -pick.y, 1.0 - pick.z}) * (1.0 + error * dice.between(-1.0, 1.0));
    const bool rigid = kind == 0 || (kind == 2 && dice.one_in(2));
    const double give = rigid ? 0.0 : std::pow(10.0, dice.between(-6.0, -2.0)) * length;
    system.spans[r] = {{in_space, {}}, {0, pick}};
    system.ropes[r] = {r, 1, length, give};
  }
  system.span_count = system.rope_count = ropes;
  return system;
}

// The worst of: force and moment out of balance, a rope that pushes or is longer than its tension makes it.
double off_balance(const RopeSystem<1>& system, const Attitude<1>& at, const Tensions& tension, Rigid rigid) {
  Curvature<1> none{};
  Move<1> left{};
  left[2] = system.load[0];
  double worst = 0.0;
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    const Rope& rope = system.ropes[r];
    const Move<1> pull = pull_of(system, at, rope, tension[r], none);
    for (std::size_t i = 0; i < left.size(); ++i) left[i] += tension[r] * pull[i];
    const double give = rigid == Rigid::held || rope.give > 0.0 ? rope.give : 1e-7 * rope.length;
    const double longer = at.length[r] - rope.length - give * tension[r];
    worst = std::max({worst, -tension[r], tension[r] > 0.0 ? std::abs(longer) : longer});
  }
  for (const double part : left) worst = std::max(worst, std::abs(part));
  return worst;
}

}  // namespace

TEST_CASE("law: from any start, what is called a balance is one, and most starts near it come to one") {
  Dice dice(20260);
  int balanced = 0;
  constexpr int all = 1500;
  for (int i = 0; i < all; ++i) {
    const auto ropes = static_cast<std::size_t>(dice.whole(1, 20));
    const int kind = dice.whole(0, 2);
    const RopeSystem<1> system = on_any_ropes(dice, ropes, kind);
    Attitude<1> at = attitude<1>(
        system,
        {{{{dice.between(-0.1, 0.1), dice.between(-0.1, 0.1), -1.0 + dice.between(-0.05, 0.05)}, as_cast}}});
    Tensions tension{};
    for (std::size_t r = 0; r < ropes; ++r) tension[r] = std::max(0.0, dice.between(-0.3, 0.6));
    const double off = std::pow(10.0, dice.between(-5.0, -1.5));
    CAPTURE(i, ropes, kind, off);
    bool found = balance(system, at, tension, off, Rigid::nearly);
    double left = found ? off_balance(system, at, tension, Rigid::nearly) : 0.0;
    if (found && kind != 1) {  // ropes that do not stretch, to the end
      found = balance(system, at, tension, 0.0, Rigid::held);
      left = found ? off_balance(system, at, tension, Rigid::held) : 0.0;
    }
    CHECK(left <= 1e-9);
    balanced += found;
  }
  CAPTURE(balanced);
  CHECK(balanced > all / 2);
}
