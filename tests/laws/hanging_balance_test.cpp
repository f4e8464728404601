// What must hold for every hung piece: forces and moments balance, no leg pushes, taut legs have the length
// their tension gives them, slack ones are not too long, and the pose is one of least energy.
//
// All is recomputed here from the positions in the answer. The energy of a pose depends only on where the
// hook is in the piece's axes, because the piece turns until its load centre is plumb below it: E(h) = sum
// EA/(2 L0) <L - L0>^2 - W |h - c|. This is another form of the sum that the search works on.

#include <catch2/catch.hpp>

#include <cmath>

#include "support/hung_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

using Plain = Vector<double>;

Plain in_m(const Position& p) { return {in(m, p.x), in(m, p.y), in(m, p.z)}; }
Plain in_kN(const ForceVector& f) { return {in(kN, f.x), in(kN, f.y), in(kN, f.z)}; }

// Ropes as lists of legs, the equalised ones first.
std::vector<std::vector<std::size_t>> ropes_of(const HungPiece& piece) {
  std::vector<std::vector<std::size_t>> ropes = piece.equalised;
  std::vector<bool> taken(piece.legs.size(), false);
  for (const auto& rope : ropes)
    for (const std::size_t leg : rope) taken[leg] = true;
  for (std::size_t i = 0; i < taken.size(); ++i)
    if (!taken[i]) ropes.push_back({i});
  return ropes;
}

struct RopeState {
  double length_m = 0.0, unstretched_m = 0.0, give_m_per_kN = 0.0;
};
RopeState state_of(const HungPiece& piece, const std::vector<std::size_t>& rope, const Plain& hook_m) {
  RopeState state;
  for (const std::size_t i : rope) {
    state.length_m += norm(hook_m - in_m(piece.legs[i].at));
    state.unstretched_m += in(m, piece.legs[i].length);
    state.give_m_per_kN += in(m, piece.legs[i].length) / in(kN, piece.legs[i].axial_stiffness);
  }
  return state;
}

Plain load_centre_m(const HungPiece& piece) {
  Plain centre;
  for (const auto& load : piece.loads)
    centre = centre + (load.force / total_of(piece)).value() * in_m(load.at);
  return centre;
}

double size_m(const HungPiece& piece) {
  double size = 0.0;
  for (const auto& leg : piece.legs)
    size = std::max({size, in(m, leg.length), norm(in_m(leg.at) - load_centre_m(piece))});
  return size;
}

}  // namespace

TEST_CASE("random pieces that hang: balance, lengths, no leg pushes") {
  Dice dice(10);
  int hung_count = 0;
  for (int count = 0; count < 500; ++count) {
    const HungPiece piece = random_piece(dice).piece;
    const auto outcome = demands::hang(piece);
    if (!is_assessed(outcome)) continue;
    ++hung_count;
    CAPTURE(count);
    const Hanging& hanging = std::get<Hanging>(outcome);
    const double load_kN = in(kN, total_of(piece)), size = size_m(piece);
    const Plain centre = load_centre_m(piece), hook = in_m(hanging.hook);

    Plain force = -1.0 * load_kN * hanging.up, moment;
    for (std::size_t i = 0; i < piece.legs.size(); ++i) {
      const Plain pull = in_kN(hanging.legs[i].on_insert), along = hook - in_m(piece.legs[i].at);
      const double tension_kN = in(kN, hanging.legs[i].tension);
      CHECK(tension_kN >= 0.0);
      CHECK(norm(pull - (tension_kN / norm(along)) * along) <= 1e-12 * load_kN);
      force = force + pull;
      moment = moment + cross(in_m(piece.legs[i].at) - centre, pull);
    }
    CHECK(norm(force) <= 1e-9 * load_kN);
    CHECK(norm(moment) <= 1e-9 * load_kN * size);
    CHECK(hanging.force_residual <= 1e-10);
    CHECK(hanging.moment_residual <= 1e-10);
    CHECK(norm(hook - centre - dot(hook - centre, hanging.up) * hanging.up) <= 1e-9 * size);

    for (const auto& rope : ropes_of(piece)) {
      const RopeState state = state_of(piece, rope, hook);
      const double tension_kN = in(kN, hanging.legs[rope.front()].tension);
      for (const std::size_t leg : rope) CHECK(in(kN, hanging.legs[leg].tension) == tension_kN);
      const double stretch = state.length_m - state.unstretched_m;
      CHECK(stretch <= tension_kN * state.give_m_per_kN + 1e-9 * size);
      CHECK((tension_kN == 0.0 || stretch >= tension_kN * state.give_m_per_kN - 1e-9 * size));
    }
  }
  CHECK(hung_count > 400);
}

TEST_CASE("no small move of the hook in the piece lowers the energy") {
  Dice dice(11);
  int hung_count = 0;
  for (int count = 0; count < 200; ++count) {
    HungPiece piece = random_piece(dice).piece;
    for (auto& leg : piece.legs) leg.axial_stiffness = std::min(leg.axial_stiffness, 1e4 * total_of(piece));
    const auto outcome = demands::hang(piece);
    if (!is_assessed(outcome)) continue;
    ++hung_count;
    const Plain centre = load_centre_m(piece), hook = in_m(std::get<Hanging>(outcome).hook);
    const auto energy_kNm = [&](const Plain& at) {
      double energy = -in(kN, total_of(piece)) * norm(at - centre);
      for (const auto& rope : ropes_of(piece)) {
        const RopeState state = state_of(piece, rope, at);
        energy +=
            0.5 * std::pow(std::max(0.0, state.length_m - state.unstretched_m), 2) / state.give_m_per_kN;
      }
      return energy;
    };
    const double least = energy_kNm(hook), rounding = 1e-12 * in(kN, total_of(piece)) * size_m(piece);
    for (int move = 0; move < 50; ++move) {
      const double by = std::pow(10.0, dice.between(-5.0, -3.0)) * size_m(piece);
      const Plain aside = hook + by * Plain{dice.between(-1, 1), dice.between(-1, 1), dice.between(-1, 1)};
      CAPTURE(count, move);
      CHECK(energy_kNm(aside) >= least - rounding);
    }
  }
  CHECK(hung_count > 150);
}
