#include "demands/rope_attitude.hpp"

#include <catch2/catch.hpp>

#include <cmath>

#include "support/hung_pieces.hpp"

using namespace firstpick::demands;
using firstpick::cross;
using firstpick::dot;
using firstpick::norm;
using firstpick::tests::Dice;

namespace {

Point any_point(Dice& dice) {
  return {dice.between(-1.0, 1.0), dice.between(-1.0, 1.0), dice.between(-1.0, 1.0)};
}

// A beam (body 0) on two ropes from the hook; one rope over a sheave on the beam, from the hook to the piece
// (body 1); two ropes from beam to piece.
RopeSystem<2> any_system(Dice& dice) {
  RopeSystem<2> system;
  system.load = {0.1, 0.9};
  const Point sheave = any_point(dice);
  system.spans[0] = {{in_space, {}}, {0, any_point(dice)}};
  system.spans[1] = {{in_space, {}}, {0, any_point(dice)}};
  system.spans[2] = {{in_space, {}}, {0, sheave}};
  system.spans[3] = {{0, sheave}, {1, any_point(dice)}};
  system.spans[4] = {{1, any_point(dice)}, {0, any_point(dice)}};
  system.spans[5] = {{0, any_point(dice)}, {1, any_point(dice)}};
  system.span_count = 6;
  system.ropes[0] = {0, 1, 1.0, 0.1};
  system.ropes[1] = {1, 1, 1.0, 0.1};
  system.ropes[2] = {2, 2, 2.0, 0.1};
  system.ropes[3] = {4, 1, 1.0, 0.1};
  system.ropes[4] = {5, 1, 1.0, 0.1};
  system.rope_count = 5;
  return system;
}

std::array<Pose, 2> upright_at(const Point& one, const Point& other) {
  const std::array<Point, 3> axes = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};
  return {{{one, axes}, {other, axes}}};
}

Attitude<2> any_attitude(Dice& dice, const RopeSystem<2>& system) {
  const Attitude<2> upright = attitude(system, upright_at({0.0, 0.0, -3.0}, {0.2, 0.1, -7.0}));
  Move<2> turned;
  for (double& part : turned) part = dice.between(-0.7, 0.7);
  return moved(system, upright, turned);
}

}  // namespace

TEST_CASE("a turn keeps the axes square and turns by its angle about its direction") {
  RopeSystem<2> system;
  const Attitude<2> upright = attitude(system, upright_at({}, {}));
  const Attitude<2> at = moved(system, upright, {0, 0, 0, 0, 0, 0.5, 0, 0, 0, 0.3, -0.4, 1.2});
  CHECK(at.poses[0].axes[0].x == Approx(std::cos(0.5)));
  CHECK(at.poses[0].axes[0].y == Approx(std::sin(0.5)));
  CHECK(at.poses[0].axes[2].z == Approx(1.0));
  const auto& axes = at.poses[1].axes;
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(norm(axes[i]) == Approx(1.0));
    CHECK(dot(axes[i], axes[(i + 1) % 3]) == Approx(0.0).margin(1e-15));
  }
  CHECK(dot(cross(axes[0], axes[1]), axes[2]) == Approx(1.0));
  CHECK(axes[0].x + axes[1].y + axes[2].z == Approx(1.0 + 2.0 * std::cos(1.3)));  // trace; |turn| = 1.3
}

TEST_CASE("pull and curvature are the first and second order of a rope's length") {
  Dice dice(2);
  for (int count = 0; count < 50; ++count) {
    const RopeSystem<2> system = any_system(dice);
    const Attitude<2> at = any_attitude(dice, system);
    Move<2> direction;
    for (double& part : direction) part = dice.between(-1.0, 1.0);
    for (std::size_t r = 0; r < system.rope_count; ++r) {
      Curvature<2> curvature{};
      const Move<2> pull = pull_of(system, at, system.ropes[r], 1.0, curvature);
      double first = 0.0, second = 0.0;
      for (std::size_t i = 0; i < direction.size(); ++i) {
        first += pull[i] * direction[i];
        for (std::size_t j = 0; j < direction.size(); ++j) {
          second += 0.5 * direction[i] * curvature[i][j] * direction[j];
          CHECK(curvature[i][j] == Approx(curvature[j][i]).margin(1e-12));
        }
      }
      // The even and the odd part of the length along the move, whose next terms are of the fourth and third
      // order.
      const double h = 1e-3;
      Move<2> ahead, back;
      for (std::size_t i = 0; i < direction.size(); ++i) {
        ahead[i] = h * direction[i];
        back[i] = -h * direction[i];
      }
      const double forward = moved(system, at, ahead).length[r], backward = moved(system, at, back).length[r];
      CAPTURE(count, r);
      CHECK((forward - backward) / (2.0 * h) == Approx(first).margin(1e-4));
      CHECK((forward - 2.0 * at.length[r] + backward) / (2.0 * h * h) == Approx(second).margin(1e-4));
    }
  }
}

TEST_CASE("yaw about the hook changes no length") {
  Dice dice(3);
  const RopeSystem<2> system = any_system(dice);
  const Attitude<2> at = any_attitude(dice, system);
  const Curvature<2> yaw = free_curvature(system, at);
  double trace = 0.0;
  for (std::size_t i = 0; i < yaw.size(); ++i) trace += yaw[i][i];
  CHECK(trace == Approx(1.0));
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    Curvature<2> unused{};
    const Move<2> pull = pull_of(system, at, system.ropes[r], 0.0, unused);
    for (std::size_t i = 0; i < yaw.size(); ++i) {
      double change = 0.0;
      for (std::size_t j = 0; j < yaw.size(); ++j) change += yaw[i][j] * pull[j];
      CHECK(change == Approx(0.0).margin(1e-14));
    }
  }
}
