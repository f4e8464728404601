#include "demands/rope_sharing.hpp"

#include "demands/linear_equations.hpp"
#include "demands/rope_bodies.hpp"

namespace firstpick::demands {

namespace {

// Makes the equations regular in the directions that no rope holds; small enough to leave the others alone.
constexpr double in_free_directions = 1e-13;

}  // namespace

template <std::size_t bodies>
void share_evenly(const RopeSystem<bodies>& system, const Attitude<bodies>& at, Tensions& tension) {
  constexpr std::size_t moves = 6 * bodies;
  std::array<std::size_t, most_ropes> rigid{};
  std::array<Move<bodies>, most_ropes> pull;
  std::size_t count = 0;
  Move<bodies> left{};
  Curvature<bodies> unused, together{};
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    if (system.ropes[r].give > 0.0 || !(tension[r] > 0.0)) continue;
    const Move<bodies>& g = pull[count] = pull_of(system, at, system.ropes[r], 0.0, unused);
    for (std::size_t i = 0; i < moves; ++i) {
      left[i] += tension[r] * g[i];
      for (std::size_t j = 0; j < moves; ++j) together[i][j] += g[i] * g[j] / system.ropes[r].length;
    }
    rigid[count++] = r;
  }
  if (count < 2) return;

  Tensions share{};
  for (int refinement = 0; refinement < 2; ++refinement) {
    LinearEquations<moves> equations;
    equations.clear(moves);
    for (std::size_t i = 0; i < moves; ++i) {
      for (std::size_t j = 0; j < moves; ++j) equations(i, j) = together[i][j];
      equations(i, i) += in_free_directions;
      equations.right(i) = left[i];
    }
    equations.solve();
    for (std::size_t n = 0; n < count; ++n) {
      double more = 0.0;
      for (std::size_t i = 0; i < moves; ++i) more += pull[n][i] * equations.right(i);
      more /= system.ropes[rigid[n]].length;
      share[n] += more;
      for (std::size_t i = 0; i < moves; ++i) left[i] -= more * pull[n][i];
    }
  }
  for (std::size_t n = 0; n < count; ++n)
    if (!(share[n] >= 0.0)) return;
  for (std::size_t n = 0; n < count; ++n) tension[rigid[n]] = share[n];
}

#define FIRSTPICK_FOR(n) \
  template void share_evenly<n>(const RopeSystem<n>&, const Attitude<n>&, Tensions&);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
