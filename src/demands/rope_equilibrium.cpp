#include "demands/rope_equilibrium.hpp"

#include <algorithm>

#include "demands/rope_balance.hpp"
#include "demands/rope_descent.hpp"
#include "demands/rope_sharing.hpp"

namespace firstpick::demands {

namespace {

// Numbers of the method, none of them of engineering; lengths over the size, forces over the load.
constexpr std::array<Descent, 4> descents = {{{2e-2, 2e-2}, {2e-3, 1e-3}, {2e-4, 1e-4}, {2e-5, 1e-6}}};
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

// Every small move but the free yaw costs energy. Ropes without tension are not counted on.
template <std::size_t bodies>
bool stays(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Tensions& tension) {
  Curvature<bodies> curvature = yaw_curvature(at);
  for (std::size_t i = 0; i < curvature.size(); ++i) curvature[i][i] -= least_curvature;
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    if (!(tension[r] > slack_below)) continue;
    const Rope& rope = system.ropes[r];
    const Move<bodies> pull = pull_of(system, at, rope, tension[r], curvature);
    const double give = std::max(rope.give, stiffest * rope.length);
    for (std::size_t i = 0; i < pull.size(); ++i)
      for (std::size_t j = 0; j < pull.size(); ++j) curvature[i][j] += pull[i] * pull[j] / give;
  }
  return is_bowl<bodies>(curvature);
}

}  // namespace

template <std::size_t bodies>
Rest<bodies> come_to_rest(const RopeSystem<bodies>& system, const std::array<Pose, bodies>& start) {
  const auto last_rope = system.ropes.begin() + static_cast<std::ptrdiff_t>(system.rope_count);
  const bool some_rigid =
      std::any_of(system.ropes.begin(), last_rope, [](const Rope& r) { return r.give == 0.0; });

  Rest<bodies> rest;
  rest.poses = start;
  Attitude<bodies> valley = nudged(system, attitude(system, start));
  for (const Descent& descent : descents) {
    go_downhill(system, valley, descent);
    Attitude<bodies> at = valley;
    Tensions tension{};
    for (std::size_t r = 0; r < system.rope_count; ++r)
      tension[r] = std::max(0.0, (at.length[r] - system.ropes[r].length) / give_in(descent, system.ropes[r]));
    if (!balance(system, at, tension, descent.least_strain, Rigid::nearly)) continue;
    if (some_rigid) {
      if (!balance(system, at, tension, 0.0, Rigid::held)) continue;
      share_evenly(system, at, tension);
    }
    rest = {stays(system, at, tension) ? Ending::at_rest : Ending::unstable, at.poses, tension};
    if (rest.ending == Ending::at_rest) break;
  }
  return rest;
}

template Rest<1> come_to_rest<1>(const RopeSystem<1>&, const std::array<Pose, 1>&);
template Rest<2> come_to_rest<2>(const RopeSystem<2>&, const std::array<Pose, 2>&);

}  // namespace firstpick::demands
