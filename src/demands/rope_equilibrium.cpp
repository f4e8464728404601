#include "demands/rope_equilibrium.hpp"

#include <algorithm>
#include <span>

#include <Eigen/Eigenvalues>

#include "demands/rope_balance.hpp"
#include "demands/rope_bodies.hpp"
#include "demands/rope_descent.hpp"
#include "demands/rope_sharing.hpp"

namespace firstpick::demands {

namespace {

// Numbers of the method, none of them of engineering; lengths over the size, forces over the load.
constexpr std::array<Descent, 4> descents = {{{2e-2, 2e-2}, {2e-3, 1e-3}, {2e-4, 1e-4}, {2e-5, 1e-6}}};
constexpr int enough_unstable = 3;         // stiffer ropes found the same ridge
constexpr double slack_below = 1e-9;      // tension that does not count as holding anything
constexpr double stiffest = 1e-6;         // strain under the whole load that a rope is counted on to have
constexpr double least_curvature = 1e-6;  // energy of a unit move below which a body counts as free to move

// A start on a ridge of the energy would stay there, or leave it by the last bit of some number.
template <std::size_t bodies>
Attitude<bodies> nudged(const RopeSystem<bodies>& system, const Attitude<bodies>& at) {
  constexpr Point turn{0.6e-3, 0.64e-3, 0.48e-3};  // oblique to everything that is drawn square
  Move<bodies> nudge{};
  for (std::size_t body = 0; body < bodies; ++body) {
    nudge[6 * body + 3] = turn.x;
    nudge[6 * body + 4] = turn.y;
    nudge[6 * body + 5] = turn.z;
  }
  return moved(system, at, nudge);
}

// What a small move costs, less the least that it must. Ropes without tension are not counted on.
template <std::size_t bodies>
Curvature<bodies> hold(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Tensions& tension) {
  Curvature<bodies> curvature = free_curvature(system, at);
  for (std::size_t i = 0; i < curvature.size(); ++i) curvature[i][i] -= least_curvature;
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    if (!(tension[r] > slack_below)) continue;
    const Rope& rope = system.ropes[r];
    const Move<bodies> pull = pull_of(system, at, rope, tension[r], curvature);
    const double give = std::max(rope.give, stiffest * rope.length);
    for (std::size_t i = 0; i < pull.size(); ++i) {
      if (pull[i] == 0.0) continue;
      for (std::size_t j = 0; j < pull.size(); ++j) curvature[i][j] += pull[i] * pull[j] / give;
    }
  }
  return curvature;
}

// The body that moves most in the move that costs least. Asked only of what is unstable: of any size, so that the solver
// is compiled once and not for every number of bodies.
std::size_t loosest_body(std::span<const double> curvature, std::size_t bodies) {
  using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const auto size = static_cast<Eigen::Index>(6 * bodies);
  const Eigen::SelfAdjointEigenSolver<Matrix> modes(Eigen::Map<const Matrix>(curvature.data(), size, size));
  std::size_t loosest = 0;
  double most = 0.0;
  for (std::size_t body = 0; body < bodies; ++body) {
    const auto row = static_cast<Eigen::Index>(6 * body);
    const double moves = modes.eigenvectors().col(0).segment<6>(row).norm();
    if (moves > most) most = moves, loosest = body;
  }
  return loosest;
}

template <std::size_t bodies>
Rest<bodies> rest_from(const RopeSystem<bodies>& system, Attitude<bodies> valley) {
  const auto last_rope = system.ropes.begin() + static_cast<std::ptrdiff_t>(system.rope_count);
  const bool some_rigid =
      std::any_of(system.ropes.begin(), last_rope, [](const Rope& r) { return r.give == 0.0; });

  Rest<bodies> rest;
  rest.poses = valley.poses;
  int unstable = 0;
  for (const Descent& descent : descents) {
    go_downhill(system, valley, descent);
    Attitude<bodies> at = valley;
    Tensions tension{};
    for (std::size_t r = 0; r < system.rope_count; ++r)
      tension[r] = std::max(0.0, (at.length[r] - system.ropes[r].length) / give_in(descent, system.ropes[r]));
    if (rest.ending == Ending::not_found) rest.tension = tension;
    if (!balance(system, at, tension, descent.least_strain, Rigid::nearly)) continue;
    if (some_rigid) {
      if (!balance(system, at, tension, 0.0, Rigid::held)) continue;
      share_evenly(system, at, tension);
    }
    const Curvature<bodies> held = hold(system, at, tension);
    rest = {is_bowl<bodies>(held) ? Ending::at_rest : Ending::unstable, at.poses, tension};
    if (rest.ending == Ending::unstable) {
      const double* const first = held.front().data();
      rest.loosest = loosest_body({first, 36 * bodies * bodies}, bodies);
    }
    if (rest.ending == Ending::at_rest || ++unstable == enough_unstable) break;
  }
  return rest;
}

}  // namespace

template <std::size_t bodies>
Rest<bodies> come_to_rest(const RopeSystem<bodies>& system, const std::array<Pose, bodies>& start) {
  const Attitude<bodies> at = attitude(system, start);
  const Rest<bodies> rest = rest_from(system, nudged(system, at));
  return rest.ending == Ending::not_found ? rest_from(system, at) : rest;
}

#define FIRSTPICK_FOR(n) \
  template Rest<n> come_to_rest<n>(const RopeSystem<n>&, const std::array<Pose, n>&);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
