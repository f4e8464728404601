// Pieces to turn, made for the tests: a panel of length L along x, width b along y, thickness t, its centre anywhere.
#pragma once

#include <algorithm>

#include <catch2/catch.hpp>

#include "demands/turning.hpp"

namespace firstpick::tests {

inline demands::HungLeg turned_leg(const std::string& to, double x, double y, double z, double length) {
  return {to, {x * m, y * m, z * m}, length * m, Force{}};
}

// 3.0 x 2.4 x 0.15 m, 25 kN, about its edge at x = 0; two legs of 1.5 m to its far edge.
inline demands::TurnedPiece panel_on_edge() {
  const Position centre{1.5 * m, 1.2 * m, 0.075 * m};
  const auto frame =
      demands::frame_about_edge({Position{0.0 * m, 0.0 * m, 0.0 * m}, Position{0.0 * m, 2.4 * m, 0.0 * m}}, centre);
  REQUIRE(is_assessed(frame));
  return {.frame = std::get<demands::TurningFrame>(frame),
          .method = plan::TurnMethod::edge,
          .legs = {turned_leg("E1", 3.0, 0.6, 0.075, 1.5), turned_leg("E2", 3.0, 1.8, 0.075, 1.5)},
          .loads = {{centre, 25.0 * kN}}};
}

// The same panel, its tail on two face inserts near the other end.
inline demands::TurnedPiece panel_on_two_hooks() {
  demands::TurnedPiece piece = panel_on_edge();
  piece.method = plan::TurnMethod::two_hooks;
  piece.tail_legs = {turned_leg("T1", 0.6, 0.7, 0.15, 2.0), turned_leg("T2", 0.6, 1.7, 0.15, 2.0)};
  const auto frame = demands::frame_between({0.6 * m, 1.2 * m, 0.15 * m}, {3.0 * m, 1.2 * m, 0.075 * m});
  REQUIRE(is_assessed(frame));
  piece.frame = std::get<demands::TurningFrame>(frame);
  return piece;
}

inline demands::TurnPose posed(const demands::TurnedPiece& piece, Angle angle) {
  const auto pose = demands::turn_pose(piece, angle);
  if (const auto* gap = std::get_if<NotAssessed>(&pose)) FAIL("at " << in(deg, angle) << " deg: " << gap->why);
  return std::get<demands::TurnPose>(pose);
}

// The largest of force and moment that is left unbalanced on the piece, over the load and load x 3 m.
inline double unbalanced(const demands::TurnedPiece& piece, const demands::TurnPose& pose,
                         const demands::Sharing& sharing) {
  ForceVector force;
  Vector<Moment> moment;
  Force total{};
  const auto add = [&](const Position& at, const ForceVector& f) {
    force = force + f;
    moment = moment + cross(at, f);
  };
  std::vector<demands::HungLeg> legs = piece.legs;
  legs.insert(legs.end(), piece.tail_legs.begin(), piece.tail_legs.end());
  REQUIRE(legs.size() == sharing.legs.size());
  for (std::size_t i = 0; i < legs.size(); ++i) add(legs[i].at, sharing.legs[i].on_insert);
  for (const auto& load : piece.loads) {
    add(load.at, pose.up * (-load.force));
    total += load.force;
  }
  add(pose.edge.at, pose.up * pose.edge.upward);
  return std::max((norm(force) / total).value(), norm(moment).value() / (total.value() * 3.0));
}

}  // namespace firstpick::tests
