// Two thousand random riggings, by a fixed seed: each one hangs, or is not assessed for a reason that is
// true.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// How far the hook is from being within reach of every rope, at best: least over h of the largest L(h) - L0.
// A convex function; its subgradient is followed with shrinking steps.
double out_of_reach_m(const HungPiece& piece) {
  std::vector<std::vector<std::size_t>> ropes = piece.equalised;
  for (std::size_t i = piece.equalised.empty() ? 0 : 4; i < piece.legs.size(); ++i) ropes.push_back({i});
  Position hook;
  for (const auto& leg : piece.legs) hook = hook + (1.0 / static_cast<double>(piece.legs.size())) * leg.at;
  double least = 1e9;
  for (int step = 1; step <= 20000; ++step) {
    double largest = -1e9;
    Direction downhill;
    for (const auto& rope : ropes) {
      double excess_m = 0.0;
      Direction slope;
      for (const std::size_t i : rope) {
        const Position from = hook - piece.legs[i].at;
        excess_m += in(m, norm(from) - piece.legs[i].length);
        const double l = std::max(1e-9, in(m, norm(from)));
        slope = slope + (1.0 / l) * Direction{in(m, from.x), in(m, from.y), in(m, from.z)};
      }
      if (excess_m <= largest) continue;
      largest = excess_m;
      downhill = -1.0 * slope;
    }
    least = std::min(least, largest);
    hook = hook + downhill * (1.0 * m / std::sqrt(static_cast<double>(step)) / 2.0);
  }
  return least;
}

// Whether some pick is below the load centre as cast.
bool load_above_a_pick(const HungPiece& piece) {
  Length z{};
  for (const auto& load : piece.loads) z += (load.force / total_of(piece)).value() * load.at.z;
  return std::any_of(piece.legs.begin(), piece.legs.end(), [&](const auto& leg) { return leg.at.z < z; });
}

bool two_legs_do_not_reach(const HungPiece& piece) {
  const auto rope_m = [&](std::size_t leg) {
    for (const auto& group : piece.equalised)
      if (std::find(group.begin(), group.end(), leg) != group.end())
        return in(m, piece.legs[group[0]].length + piece.legs[group[1]].length);
    return in(m, piece.legs[leg].length);
  };
  for (std::size_t i = 0; i < piece.legs.size(); ++i)
    for (std::size_t j = i + 1; j < piece.legs.size(); ++j) {
      const bool one_rope = !piece.equalised.empty() && i / 2 == j / 2 && j < 4;
      const double together = one_rope ? rope_m(i) : rope_m(i) + rope_m(j);
      if (in(m, norm(piece.legs[i].at - piece.legs[j].at)) >= together) return true;
    }
  return false;
}

}  // namespace

TEST_CASE("2,000 random riggings of 1 to 8 legs hang, or have a true reason not to") {
  Dice dice(40);
  std::map<std::string, int> count_of;
  for (int count = 0; count < 2000; ++count) {
    const RandomPiece random = random_piece(dice);
    const auto outcome = demands::hang(random.piece);
    if (is_assessed(outcome)) {
      ++count_of["hangs"];
      continue;
    }
    const std::string why = why_not(outcome);
    CAPTURE(count, why);
    if (why.find("they cannot meet at one hook") != std::string::npos) {
      ++count_of["two do not reach"];
      CHECK(two_legs_do_not_reach(random.piece));
    } else if (why.rfind("no position was found", 0) == 0) {
      ++count_of["no position"];
      CHECK(random.any_length);
      CHECK(out_of_reach_m(random.piece) > 0.0);
    } else {
      ++count_of["would roll or tip"];
      CHECK(why.rfind("the piece would ", 0) == 0);
      CHECK(load_above_a_pick(random.piece));
    }
  }
  CHECK(count_of["hangs"] > 1800);
  CHECK(count_of["two do not reach"] > 0);
  CHECK(count_of["would roll or tip"] > 50);
}

TEST_CASE("the measure of reach knows what reaches and what does not") {
  const Position below = at_m(0.0, 0.0, -0.2);
  CHECK(out_of_reach_m(circle(3, 1.0, 0.95, does_not_stretch, below, 10.0 * kN)) ==
        Approx(0.05).margin(0.005));
  CHECK(out_of_reach_m(circle(3, 1.0, 1.05, does_not_stretch, below, 10.0 * kN)) < 0.0);
}
