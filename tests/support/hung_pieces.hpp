// Hung pieces for tests: the usual riggings, and any number of random ones from a fixed seed.
#pragma once

#include <cmath>
#include <cstdint>
#include <limits>
#include <random>
#include <string>

#include "demands/hanging.hpp"
#include "support/assessed.hpp"

namespace firstpick::tests {

using demands::Hanging;
using demands::HungPiece;

inline const Force does_not_stretch = Force::from_value(std::numeric_limits<double>::infinity());

inline Position at_m(double x, double y, double z) { return {x * m, y * m, z * m}; }

// Inserts A1 to A4 counter-clockwise from (+, +) in the plane z = 0, all legs alike, one load.
inline HungPiece rectangle(double along_x_m, double along_y_m, double leg_m, Force axial_stiffness,
                           Position load_at, Force load) {
  const double x = along_x_m / 2.0, y = along_y_m / 2.0;
  HungPiece piece;
  piece.legs = {{"A1", at_m(x, y, 0.0), leg_m * m, axial_stiffness},
                {"A2", at_m(-x, y, 0.0), leg_m * m, axial_stiffness},
                {"A3", at_m(-x, -y, 0.0), leg_m * m, axial_stiffness},
                {"A4", at_m(x, -y, 0.0), leg_m * m, axial_stiffness}};
  piece.loads = {{load_at, load}};
  return piece;
}

// Inserts A1, A2, ... on a circle in the plane z = 0, all legs alike.
inline HungPiece circle(int legs, double radius_m, double leg_m, Force axial_stiffness, Position load_at,
                        Force load) {
  HungPiece piece;
  for (int i = 0; i < legs; ++i) {
    const double angle = 2.0 * 3.14159265358979323846 * i / legs;
    piece.legs.push_back({"A" + std::to_string(i + 1),
                          at_m(radius_m * std::cos(angle), radius_m * std::sin(angle), 0.0), leg_m * m,
                          axial_stiffness});
  }
  piece.loads = {{load_at, load}};
  return piece;
}

inline Hanging hung(const HungPiece& piece) { return assessed(demands::hang(piece)); }

inline Force total_of(const HungPiece& piece) {
  Force total{};
  for (const auto& load : piece.loads) total += load.force;
  return total;
}

// The same numbers on every machine: the engine is fixed by the standard, its distributions are not.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<unsigned>(high - low + 1));
  }
  bool one_in(int n) { return whole(1, n) == 1; }

 private:
  std::mt19937_64 engine_;
};

// 1 to 8 legs that reach a common hook but for errors of length; rigid, elastic or both; some equalised; the
// load mostly below the picks. `any_length`: legs of any length instead, which may not reach.
struct RandomPiece {
  HungPiece piece;
  bool any_length = false;
};

inline RandomPiece random_piece(Dice& dice) {
  RandomPiece random;
  HungPiece& piece = random.piece;
  const int legs = dice.whole(1, 8);
  const double load_kN = dice.between(10.0, 500.0);
  const double hook[3] = {dice.between(-0.5, 0.5), dice.between(-0.5, 0.5), dice.between(0.8, 5.0)};
  const double error = std::pow(10.0, dice.between(-8.0, -1.5));
  const int kind = dice.whole(0, 3);
  const bool in_a_plane = !dice.one_in(3);
  random.any_length = dice.one_in(10);
  for (int i = 0; i < legs; ++i) {
    const double x = dice.between(-3.0, 3.0), y = dice.between(-2.0, 2.0);
    const double z = in_a_plane ? 0.0 : dice.between(-0.3, 0.3);
    const double to_hook = std::hypot(x - hook[0], y - hook[1], z - hook[2]);
    const double length =
        random.any_length ? dice.between(1.0, 6.0) : to_hook * (1.0 + error * dice.between(-1.0, 1.0));
    const Force elastic = std::pow(10.0, dice.between(1.0, 6.0)) * load_kN * kN;
    const bool rigid = kind == 0 || (kind == 3 && dice.one_in(2));
    const Force stiffness = rigid ? does_not_stretch : kind == 1 ? 1e5 * load_kN * kN : elastic;
    piece.legs.push_back({"A" + std::to_string(i + 1), at_m(x, y, z), length * m, stiffness});
  }
  if (legs >= 4 && dice.one_in(4)) piece.equalised = {{0, 1}, {2, 3}};
  const double below = dice.one_in(6) ? dice.between(-1.0, 1.0) : dice.between(-2.0, -0.05);
  for (const double share : {0.7, 0.3})
    piece.loads.push_back(
        {at_m(dice.between(-0.6, 0.6), dice.between(-0.4, 0.4), below), share * load_kN * kN});
  return random;
}

}  // namespace firstpick::tests
