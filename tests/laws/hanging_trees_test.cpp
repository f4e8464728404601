// Laws of rigging trees, over random ones: forces balance on every body, nothing pushes, a refusal has a true
// reason, and neither turning everything about the vertical, nor a mirror, nor the order of the legs changes
// anything.

#include <catch2/catch.hpp>

#include <map>
#include <numeric>

#include "demands/imbalance.hpp"
#include "support/random_trees.hpp"

using namespace firstpick;
using namespace firstpick::demands;
using namespace firstpick::tests;

namespace {

template <class Change>
HungPiece with_places(HungPiece piece, const Change& change) {
  for (HungLeg& leg : piece.legs) leg.at = change(leg.at), leg.from_at = change(leg.from_at);
  for (Carrier& carrier : piece.carriers) carrier.centre = change(carrier.centre);
  for (auto& load : piece.loads) load.at = change(load.at);
  return piece;
}

bool well_conditioned(const HungPiece& piece) {  // not a hair from another set of taut legs
  for (const HungLeg& leg : piece.legs)
    if (!isfinite(leg.axial_stiffness) || leg.axial_stiffness > 1e5 * piece.loads[0].force) return false;
  return true;
}

}  // namespace

TEST_CASE("random trees hang in balance, or are refused with a true reason") {
  Dice dice(2026);
  std::map<std::string, int> count_of;
  for (int i = 0; i < 10000; ++i) {
    const RandomTree tree(dice);
    const auto outcome = hang(tree.piece);
    CAPTURE(i);
    if (const auto* gap = std::get_if<NotAssessed>(&outcome)) {
      const bool true_reason = gap->why.find("roll") != std::string::npos ||
                               gap->why.find("tip") != std::string::npos ||
                               gap->why.find("slack") != std::string::npos ||
                               gap->why.find("would not hang still") != std::string::npos;
      CHECK(true_reason);
      CHECK_FALSE(gap->remedy.empty());
      ++count_of["refused"];
      continue;
    }
    const auto& hanging = std::get<Hanging>(outcome);
    const Imbalance left = imbalance(tree.piece, hanging);
    CHECK(left.force <= 1e-9);
    CHECK(left.moment <= 1e-9);
    CHECK(left.length <= 1e-9);
    CHECK_FALSE(left.a_leg_pushes);
    CHECK(hanging.stable);
    ++count_of[tree.piece.carriers.empty() ? "piece alone" : "tree"];
  }
  CHECK(count_of["tree"] > 6000);
  CHECK(count_of["piece alone"] > 500);
  CHECK(count_of["refused"] < 700);
}

TEST_CASE("turned about the vertical, mirrored, in another order: the same tensions") {
  Dice dice(7);
  int compared = 0;
  for (int i = 0; i < 600; ++i) {
    const RandomTree tree(dice);
    if (!well_conditioned(tree.piece)) continue;
    const auto outcome = hang(tree.piece);
    if (!is_assessed(outcome)) continue;
    const auto& hanging = std::get<Hanging>(outcome);
    if (in(deg, hanging.tilt) > 20.0) continue;  // another valley may be as near
    const double c = std::cos(0.7), s = std::sin(0.7);
    const HungPiece turned = with_places(
        tree.piece, [&](const Position& p) { return Position{c * p.x - s * p.y, s * p.x + c * p.y, p.z}; });
    const HungPiece mirrored =
        with_places(tree.piece, [](const Position& p) { return Position{-1.0 * p.x, p.y, p.z}; });
    HungPiece reversed = tree.piece;
    std::ranges::reverse(reversed.legs);
    const std::size_t last = reversed.legs.size() - 1;
    for (auto& group : reversed.equalised)
      for (std::size_t& leg : group) leg = last - leg;
    const auto of_turned = hang(turned), of_mirrored = hang(mirrored), of_reversed = hang(reversed);
    CAPTURE(i);
    REQUIRE(is_assessed(of_turned));
    REQUIRE(is_assessed(of_mirrored));
    REQUIRE(is_assessed(of_reversed));
    const double load = in(kN, tree.piece.loads[0].force);
    for (std::size_t leg = 0; leg <= last; ++leg) {
      const double tension = in(kN, hanging.legs[leg].tension);
      CHECK(in(kN, std::get<Hanging>(of_turned).legs[leg].tension) == Approx(tension).margin(1e-6 * load));
      CHECK(in(kN, std::get<Hanging>(of_mirrored).legs[leg].tension) == Approx(tension).margin(1e-6 * load));
      CHECK(in(kN, std::get<Hanging>(of_reversed).legs[last - leg].tension) == Approx(tension).margin(1e-6 * load));
    }
    ++compared;
  }
  CHECK(compared > 100);
}

// Legs ten times as stiff stretch a tenth as much: the pose goes to that of legs that do not stretch.
TEST_CASE("stiffer legs come to the pose of legs that do not stretch") {
  Dice dice(11);
  int compared = 0;
  for (int i = 0; i < 200; ++i) {
    RandomTree tree(dice);
    HungPiece piece = tree.piece;
    const auto tilt_at = [&](Force stiffness) {
      for (HungLeg& leg : piece.legs) leg.axial_stiffness = stiffness;
      const auto outcome = hang(piece);
      return is_assessed(outcome) ? in(deg, std::get<Hanging>(outcome).tilt) : -1.0;
    };
    const double stiff = tilt_at(1e7 * piece.loads[0].force), rigid = tilt_at(does_not_stretch);
    if (stiff < 0.0 || rigid < 0.0 || rigid > 20.0) continue;
    CAPTURE(i);
    CHECK(stiff == Approx(rigid).margin(2e-3));
    ++compared;
  }
  CHECK(compared > 100);
}
