// A hung piece knows neither left nor right, nor the order of its legs, nor the units it was written in.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr double tension_within = 1e-8;  // of the load

using Change = std::function<Position(const Position&)>;

HungPiece changed(HungPiece piece, const Change& change) {
  for (auto& leg : piece.legs) leg.at = change(leg.at);
  for (auto& load : piece.loads) load.at = change(load.at);
  return piece;
}

Position mirrored(const Position& p) { return {p.x, -p.y, p.z}; }
Position turned(const Position& p) {
  const double c = std::cos(0.7), s = std::sin(0.7);
  return {c * p.x - s * p.y, s * p.x + c * p.y, p.z};
}
Position shifted(const Position& p) { return p + at_m(3.0, -2.0, 5.0); }

// The pose of `other` must be that of `piece`, changed. Random pieces near a limit of what hangs may fall on
// either side of it; those are left out by asking both to hang.
int compare(const HungPiece& piece, const HungPiece& other, const Change& change) {
  const auto one = demands::hang(piece), two = demands::hang(other);
  if (!is_assessed(one) || !is_assessed(two)) return 0;
  const Hanging &a = std::get<Hanging>(one), &b = std::get<Hanging>(two);
  const double within_kN = tension_within * in(kN, total_of(piece));
  for (std::size_t i = 0; i < piece.legs.size(); ++i)
    CHECK(in(kN, a.legs[i].tension) == Approx(in(kN, b.legs[i].tension)).margin(within_kN));
  const Position hook = change(a.hook);
  CHECK(in(m, norm(hook - b.hook)) == Approx(0.0).margin(1e-6));
  CHECK(in(deg, a.tilt) == Approx(in(deg, b.tilt)).margin(1e-5));
  return 1;
}

}  // namespace

TEST_CASE("mirrored, turned about the vertical or shifted, a piece hangs mirrored, turned or shifted") {
  Dice dice(20);
  const Change changes[] = {mirrored, turned, shifted};
  int compared = 0;
  for (int count = 0; count < 150; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    for (const Change& change : changes) {
      CAPTURE(count);
      compared += compare(piece, changed(piece, change), change);
    }
  }
  CHECK(compared > 350);
}

TEST_CASE("the order of the legs does not matter") {
  Dice dice(21);
  int compared = 0;
  for (int count = 0; count < 150; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    HungPiece reversed = piece;
    std::reverse(reversed.legs.begin(), reversed.legs.end());
    for (auto& group : reversed.equalised)
      for (std::size_t& leg : group) leg = piece.legs.size() - 1 - leg;
    const auto one = demands::hang(piece), two = demands::hang(reversed);
    if (!is_assessed(one) || !is_assessed(two)) continue;
    ++compared;
    const auto &a = std::get<Hanging>(one).legs, &b = std::get<Hanging>(two).legs;
    const double within_kN = tension_within * in(kN, total_of(piece));
    CAPTURE(count);
    for (std::size_t i = 0; i < a.size(); ++i)
      CHECK(in(kN, a[i].tension) == Approx(in(kN, b[a.size() - 1 - i].tension)).margin(within_kN));
  }
  CHECK(compared > 120);
}

TEST_CASE("loads and stiffness times ten, tensions times ten, all lengths times ten, tensions the same") {
  Dice dice(22);
  int compared = 0;
  for (int count = 0; count < 150; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    HungPiece heavier = piece, larger = piece;
    for (auto& load : heavier.loads) load.force *= 10.0;
    for (auto& leg : heavier.legs) leg.axial_stiffness *= 10.0;
    for (auto& load : larger.loads) load.at = 10.0 * load.at;
    for (auto& leg : larger.legs) {
      leg.at = 10.0 * leg.at;
      leg.length *= 10.0;
    }
    const auto one = demands::hang(piece), ten = demands::hang(heavier), big = demands::hang(larger);
    if (!is_assessed(one) || !is_assessed(ten) || !is_assessed(big)) continue;
    ++compared;
    const double within_kN = tension_within * in(kN, total_of(piece));
    CAPTURE(count);
    for (std::size_t i = 0; i < piece.legs.size(); ++i) {
      const double tension_kN = in(kN, std::get<Hanging>(one).legs[i].tension);
      CHECK(in(kN, std::get<Hanging>(ten).legs[i].tension) / 10.0 == Approx(tension_kN).margin(within_kN));
      CHECK(in(kN, std::get<Hanging>(big).legs[i].tension) == Approx(tension_kN).margin(within_kN));
    }
  }
  CHECK(compared > 120);
}

TEST_CASE("the same piece gives the same bits") {
  Dice dice(23);
  for (int count = 0; count < 50; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    const auto one = demands::hang(piece), two = demands::hang(piece);
    REQUIRE(is_assessed(one) == is_assessed(two));
    if (!is_assessed(one)) continue;
    for (std::size_t i = 0; i < piece.legs.size(); ++i)
      CHECK(std::get<Hanging>(one).legs[i].tension == std::get<Hanging>(two).legs[i].tension);
  }
}
