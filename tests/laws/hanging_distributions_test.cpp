// Every basic distribution balances and bounds what any distribution can give a leg.

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE(
    "basic distributions of random pieces: balance, at most three ropes, no two alike, elastic tensions "
    "within") {
  Dice dice(50);
  int asked = 0;
  for (int count = 0; count < 300; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    const auto outcome = demands::hang(piece);
    if (!is_assessed(outcome)) continue;
    const Hanging& hanging = std::get<Hanging>(outcome);
    const auto found = demands::basic_distributions(piece, hanging);
    if (!is_assessed(found)) {
      CHECK(std::any_of(hanging.legs.begin(), hanging.legs.end(),
                        [](const auto& leg) { return leg.angle_from_horizontal < 1e-8 * radian; }));
      continue;
    }
    ++asked;
    CAPTURE(count);
    const auto& sharings = std::get<std::vector<demands::Sharing>>(found);
    const double load_kN = in(kN, total_of(piece));
    std::set<std::set<std::size_t>> carrying_sets;
    std::vector<double> worst_kN(piece.legs.size(), 0.0);
    for (const auto& sharing : sharings) {
      Vector<double> left = -1.0 * load_kN * hanging.up;
      std::set<std::size_t> carrying;
      for (std::size_t i = 0; i < piece.legs.size(); ++i) {
        const auto& leg = sharing.legs[i];
        const double tension_kN = in(kN, leg.tension);
        CHECK(tension_kN >= 0.0);
        left =
            left + Vector<double>{in(kN, leg.on_insert.x), in(kN, leg.on_insert.y), in(kN, leg.on_insert.z)};
        if (tension_kN > 0.0) carrying.insert(i);
        worst_kN[i] = std::max(worst_kN[i], tension_kN);
      }
      CHECK(norm(left) <= 1e-8 * load_kN);
      CHECK(carrying.size() <= 3 + 2 * piece.equalised.size());
      CHECK(carrying_sets.insert(carrying).second);
    }
    for (std::size_t i = 0; i < piece.legs.size(); ++i)
      CHECK(in(kN, hanging.legs[i].tension) <= worst_kN[i] + 1e-7 * load_kN);
  }
  CHECK(asked > 240);
}

// Four legs: the distributions form a line between two corners, and equal legs are at its middle by symmetry.
TEST_CASE("for a rectangle every sharing between the two diagonals is a mixture of them") {
  for (const double short_by_mm : {0.0, 3.0, 8.0, 12.0}) {
    HungPiece piece = rectangle(3.0, 2.0, 3.0, 25120.0 * kN, at_m(0.0, 0.0, -0.3), 100.0 * kN);
    piece.legs[1].length -= short_by_mm * mm;
    const Hanging hanging = hung(piece);
    const auto corners = assessed(demands::basic_distributions(piece, hanging));
    REQUIRE(corners.size() == 2);
    const Force least = corners[0].legs[1].tension, most = corners[1].legs[1].tension;
    const double part = (hanging.legs[1].tension - least) / (most - least);
    CAPTURE(short_by_mm);
    CHECK(part == Approx(0.5 + 0.5 * short_by_mm / 14.94).margin(0.01));
    for (std::size_t i = 0; i < 4; ++i)
      CHECK(in(kN, hanging.legs[i].tension) ==
            Approx(in(kN, part * corners[1].legs[i].tension + (1.0 - part) * corners[0].legs[i].tension))
                .margin(1e-6));
  }
}
