#include "demands/rope_balance.hpp"

#include <algorithm>
#include <bitset>
#include <cmath>

#include "demands/linear_equations.hpp"
#include "demands/rope_bodies.hpp"
#include "demands/rope_descent.hpp"

namespace firstpick::demands {

namespace {

constexpr double nearly_rigid = 1e-7;  // strain under the whole load
constexpr double longest_step = 0.2;   // radians, or parts of the size
constexpr double stays_put = 1e-10;    // curvature in a free direction
constexpr double settled_move = 1e-6;  // what it leaves is its square
constexpr double settled_force = 1e-12;
constexpr double settled_length = 1e-10;

// The balance near an attitude, to first order.
template <std::size_t bodies>
struct Linear {
  Curvature<bodies> curvature;
  std::array<Move<bodies>, most_ropes> pull;
  Tensions give{}, excess{}, tension{};  // excess: L - L0, less what the rope gives already
  std::bitset<most_ropes> taut;
  Move<bodies> move{};
};

template <std::size_t bodies>
void solve(const RopeSystem<bodies>& system, Linear<bodies>& linear) {
  constexpr std::size_t moves = 6 * bodies;
  LinearEquations<moves + most_ropes> equations;
  equations.clear(moves + linear.taut.count());
  for (std::size_t i = 0; i < moves; ++i)
    for (std::size_t j = 0; j < moves; ++j) equations(i, j) = linear.curvature[i][j];
  for (std::size_t k = 0; k < bodies; ++k) equations.right(6 * k + 2) = -system.load[k];
  std::size_t row = moves;
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    if (!linear.taut[r]) continue;
    for (std::size_t i = 0; i < moves; ++i) equations(row, i) = equations(i, row) = linear.pull[r][i];
    equations(row, row) = -linear.give[r];
    equations.right(row++) = -linear.excess[r];
  }
  equations.solve();
  for (std::size_t i = 0; i < moves; ++i) linear.move[i] = equations.right(i);
  row = moves;
  for (std::size_t r = 0; r < system.rope_count; ++r)
    linear.tension[r] = linear.taut[r] ? equations.right(row++) : 0.0;
}

template <std::size_t size>
double size_of(const std::array<double, size>& move) {
  double square = 0.0;
  for (const double part : move) square += part * part;
  return std::sqrt(square);
}

// A taut rope that would push, or a slack one that would be too long.
template <std::size_t bodies>
bool is_wrong(const Linear<bodies>& linear, std::size_t r) {
  if (linear.taut[r]) return linear.tension[r] < -1e-12;
  double longer = linear.excess[r];
  for (std::size_t i = 0; i < linear.move.size(); ++i) longer += linear.pull[r][i] * linear.move[i];
  return longer > 1e-13;
}

// Solves for move, tensions and the set of taut ropes: a linear complementarity problem. Ropes that are wrong
// change sides together until a set comes back; in a bowl then the first of them only, which comes to an end
// (K. G. Murty's least-index rule).
template <std::size_t bodies>
bool find_taut(const RopeSystem<bodies>& system, Linear<bodies>& linear, bool in_a_bowl) {
  std::array<std::bitset<most_ropes>, 8> seen;
  std::size_t seen_count = 0;
  bool together = true;
  for (int count = 0; count < 100; ++count) {
    const auto seen_end = seen.begin() + static_cast<std::ptrdiff_t>(seen_count);
    if (together &&
        (seen_count == seen.size() || std::find(seen.begin(), seen_end, linear.taut) != seen_end)) {
      if (!in_a_bowl) return false;
      together = false;
    }
    if (together) seen[seen_count++] = linear.taut;

    solve(system, linear);
    bool right = true;
    for (std::size_t r = 0; r < system.rope_count && (right || together); ++r) {
      if (!is_wrong(linear, r)) continue;
      linear.taut.flip(r);
      right = false;
    }
    if (right) return true;
  }
  return false;
}

}  // namespace

template <std::size_t bodies>
bool balance(const RopeSystem<bodies>& system, Attitude<bodies>& at, Tensions& tension, double off,
             Rigid rigid) {
  Linear<bodies> linear;
  for (std::size_t r = 0; r < system.rope_count; ++r) linear.taut[r] = tension[r] > 0.0;
  double soft = off * off;
  double held_give = 1e-5;
  for (int step = 0; step < 40; ++step) {
    held_give = std::max(1e-12, 0.1 * held_give);
    bool settled = true;
    double least_give = 1.0;
    linear.curvature = free_curvature(system, at);
    for (std::size_t i = 0; i < linear.move.size(); ++i) linear.curvature[i][i] += stays_put;
    for (std::size_t r = 0; r < system.rope_count; ++r) {
      const Rope& rope = system.ropes[r];
      const bool held = rigid == Rigid::held && rope.give == 0.0;
      const double give = held ? held_give : rope.give > 0.0 ? rope.give : nearly_rigid * rope.length;
      linear.pull[r] = pull_of(system, at, rope, tension[r], linear.curvature);
      linear.give[r] = std::max(give, soft);
      linear.excess[r] = at.length[r] - rope.length + (held ? linear.give[r] * tension[r] : 0.0);
      if (!held) least_give = std::min(least_give, give);
      settled = settled && linear.give[r] == give;
    }
    const std::bitset<most_ropes> taut_before = linear.taut;
    if (!find_taut(system, linear, false) || !(size_of(linear.move) < longest_step)) {
      settled = false;
      linear.taut = taut_before;
      make_bowl<bodies>(linear.curvature);
      if (!find_taut(system, linear, true)) return false;
    }
    const double moved_by = size_of(linear.move);
    soft = std::min(soft, moved_by * moved_by);
    if (!(moved_by < longest_step)) return false;  // also what is not a number
    at = moved(system, at, linear.move);

    double most_changed = 0.0;
    for (std::size_t r = 0; r < system.rope_count; ++r) {
      const double now = std::max(0.0, linear.tension[r]);
      const double changed = std::abs(now - tension[r]);
      if (rigid == Rigid::held && system.ropes[r].give == 0.0)
        settled = settled && changed * held_give <= settled_length;
      most_changed = std::max(most_changed, changed);
      tension[r] = now;
    }
    // What is left: of the lengths the square of the move, of the forces the move times the change of the
    // tensions.
    const double left_of_length = moved_by * moved_by, left_of_force = moved_by * most_changed;
    if (settled && moved_by <= settled_move && left_of_force <= settled_force &&
        left_of_length <= std::max(1e-18, 1e-9 * least_give))
      return true;
  }
  return false;
}

#define FIRSTPICK_FOR(n) \
  template bool balance<n>(const RopeSystem<n>&, Attitude<n>&, Tensions&, double, Rigid);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
