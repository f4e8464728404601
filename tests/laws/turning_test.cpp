// What must hold for every turn: balance at every angle, mirror and rotation about the vertical, more weight never better.

#include <algorithm>

#include "support/plan_files.hpp"
#include "support/report_numbers.hpp"
#include "support/slab_text.hpp"
#include "unit/demands/turning_pieces.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

// Three to five legs anywhere beyond the middle of a slab of random size, a load anywhere inside.
TurnedPiece random_turn(Chance& chance) {
  const double length = chance.between(1.5, 6.0), width = chance.between(1.0, 4.0), thick = chance.between(0.1, 0.5);
  const Position centre{chance.between(0.3, 0.5) * length * m, chance.between(0.45, 0.55) * width * m,
                        chance.between(0.2, 0.6) * thick * m};
  const auto frame = frame_about_edge({Position{}, Position{0.0 * m, width * m, 0.0 * m}}, centre);
  REQUIRE(is_assessed(frame));
  TurnedPiece piece{.frame = std::get<TurningFrame>(frame), .loads = {{centre, chance.between(5.0, 90.0) * kN}}};
  const double height = chance.between(0.8, 1.5) * length;
  const int legs = static_cast<int>(chance.whole_between(2.0, 5.0));
  for (int i = 0; i < legs; ++i) {
    const double x = chance.between(0.75, 1.0) * length, y = (i + 0.5) / legs * width;
    const double dx = x - 0.9 * length, dy = y - 0.5 * width;
    piece.legs.push_back(turned_leg("A" + std::to_string(i), x, y, thick, std::hypot(dx, dy, height)));
  }
  return piece;
}

Position mirrored(const Position& p) { return {p.x, -p.y, p.z}; }
Position rotated(const Position& p) { return {-p.y, p.x, p.z}; }  // by a right angle about the vertical as cast

template <class Move>
TurnedPiece moved(const TurnedPiece& piece, const Move& move) {
  TurnedPiece other = piece;
  for (HungLeg& leg : other.legs) leg.at = move(leg.at);
  for (auto& load : other.loads) load.at = move(load.at);
  const Position far = piece.frame.on_axis + piece.frame.along * piece.frame.reach;
  const auto frame = frame_about_edge({move(piece.frame.on_axis), move(far)}, other.loads.front().at);
  REQUIRE(is_assessed(frame));
  other.frame = std::get<TurningFrame>(frame);
  return other;
}

}  // namespace

TEST_CASE("forces and moments balance to 1e-9 at every angle, in every sharing") {
  Chance chance(101);
  int assessed = 0;
  for (int i = 0; i < 200; ++i) {
    const TurnedPiece piece = random_turn(chance);
    for (double t = 0.0; t <= 60.0; t += 7.5) {
      const auto pose = turn_pose(piece, t * deg);
      if (!is_assessed(pose)) continue;
      ++assessed;
      CAPTURE(i, t);
      const auto& found = std::get<TurnPose>(pose);
      CHECK(found.edge.upward >= Force{});
      for (const Sharing& sharing : found.sharings) {
        CHECK(unbalanced(piece, found, sharing) < 1e-9);
        for (const LegForce& leg : sharing.legs) CHECK(leg.tension >= Force{});
      }
    }
  }
  CHECK(assessed > 1000);
}

TEST_CASE("a mirrored or rotated turn has the same pulls") {
  Chance chance(102);
  for (int i = 0; i < 100; ++i) {
    const TurnedPiece piece = random_turn(chance);
    for (const TurnedPiece& other : {moved(piece, mirrored), moved(piece, rotated)})
      for (const double t : {0.0, 25.0, 50.0}) {
        const auto a = turn_pose(piece, t * deg), b = turn_pose(other, t * deg);
        CAPTURE(i, t);
        REQUIRE(is_assessed(a) == is_assessed(b));
        if (!is_assessed(a)) continue;
        const auto &pa = std::get<TurnPose>(a), &pb = std::get<TurnPose>(b);
        CHECK(pa.main_pull.value() == Approx(pb.main_pull.value()).epsilon(1e-9));
        REQUIRE(pa.sharings.size() == pb.sharings.size());
        for (std::size_t s = 0; s < pa.sharings.size(); ++s)
          for (std::size_t leg = 0; leg < piece.legs.size(); ++leg)
            CHECK(pa.sharings[s].legs[leg].tension.value() ==
                  Approx(pb.sharings[s].legs[leg].tension.value()).epsilon(1e-7).margin(1e-6));
      }
  }
}

TEST_CASE("all pulls grow with the load, and nothing else does") {
  Chance chance(103);
  for (int i = 0; i < 50; ++i) {
    TurnedPiece piece = random_turn(chance);
    const auto before = turn_pose(piece, 30.0 * deg);
    piece.loads.front().force *= 1.7;
    const auto after = turn_pose(piece, 30.0 * deg);
    REQUIRE(is_assessed(before) == is_assessed(after));
    if (!is_assessed(before)) continue;
    CHECK(std::get<TurnPose>(after).main_pull.value() ==
          Approx(1.7 * std::get<TurnPose>(before).main_pull.value()).epsilon(1e-12));
  }
}

TEST_CASE("more weight never improves the verdict of a plan that turns") {
  for (const std::string folder : {"ok", "hold", "nogo"})
    for (const std::string& file : test_plans(folder)) {
      std::string text = contents_of(file);
      if (text.find("[stage.turn]") == std::string::npos) continue;
      const auto before = report_on(file, text);
      const std::string density = "density = \"2400 kg/m3\"";
      const std::size_t at = text.find(density);
      REQUIRE(at != std::string::npos);
      text.replace(at, density.size(), "density = \"2600 kg/m3\"");
      const auto after = report_on(file, text);
      CAPTURE(file);
      CHECK(after.verdict >= before.verdict);
      const auto light = utilizations(before), heavy = utilizations(after);
      for (const auto& [name, use] : heavy)
        if (name.find("roll-stability") == std::string::npos) {
          CAPTURE(name);
          CHECK(use >= light.at(name) * (1.0 - 1e-7) - 1e-9);
        }
    }
}
