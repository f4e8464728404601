#include "demands/rope_descent.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Cholesky>

#include "demands/rope_bodies.hpp"

namespace firstpick::demands {

namespace {

constexpr double longest_step = 0.5;  // radians, or parts of the size
constexpr double enough = 1e-4;       // of the fall that the slope foretells
constexpr double shorter = 0.3;
constexpr double flat = 1e-3;         // of the closeness: a step so short where nothing curves up ends it too

template <std::size_t bodies>
using Matrix = Eigen::Matrix<double, 6 * bodies, 6 * bodies>;  // of symmetric ones: by columns or by rows is the same
template <std::size_t bodies>
using Column = Eigen::Matrix<double, 6 * bodies, 1>;

template <std::size_t bodies>
Eigen::LLT<Matrix<bodies>> cholesky(const Curvature<bodies>& curvature) {
  return Eigen::LLT<Matrix<bodies>>(Eigen::Map<const Matrix<bodies>>(curvature.front().data()));
}

// Eigen's own word for it passes over a pivot that is not a number.
template <std::size_t bodies>
bool curves_up(const Eigen::LLT<Matrix<bodies>>& factored) {
  return factored.info() == Eigen::Success && factored.matrixLLT().diagonal().allFinite();
}

template <std::size_t bodies>
double energy_of(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Descent& descent) {
  double energy = 0.0;
  for (std::size_t k = 0; k < bodies; ++k) energy += system.load[k] * at.poses[k].origin.z;
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    const double stretch = std::max(0.0, at.length[r] - system.ropes[r].length);
    energy += 0.5 * stretch * stretch / give_in(descent, system.ropes[r]);
  }
  return energy;
}

// Adds to the diagonal until it is a bowl; what was added, and the factors that showed it.
template <std::size_t bodies>
double made_a_bowl(Curvature<bodies>& curvature, Eigen::LLT<Matrix<bodies>>& factored) {
  double added = 0.0, more = 1e-2;
  factored = cholesky<bodies>(curvature);
  while (!curves_up<bodies>(factored) && added < 1e9) {
    for (std::size_t i = 0; i < curvature.size(); ++i) curvature[i][i] += more;
    added += more;
    more *= 4.0;
    factored = cholesky<bodies>(curvature);
  }
  return added;
}

// Newton's step from here, not longer than the longest; its slope, and whether it is a whole step of the
// energy itself.
template <std::size_t bodies>
struct Newton {
  Column<bodies> step;
  double slope = 0.0, wanted = 0.0;
  bool plain = false;
};

template <std::size_t bodies>
Newton<bodies> newton(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Descent& descent) {
  Column<bodies> gradient = Column<bodies>::Zero();
  for (std::size_t k = 0; k < bodies; ++k) gradient(static_cast<Eigen::Index>(6 * k + 2)) = system.load[k];
  Curvature<bodies> curvature = free_curvature(system, at);
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    const double give = give_in(descent, system.ropes[r]);
    const double tension = (at.length[r] - system.ropes[r].length) / give;
    if (!(tension > 0.0)) continue;
    const Move<bodies> pull = pull_of(system, at, system.ropes[r], tension, curvature);
    for (std::size_t i = 0; i < pull.size(); ++i) {
      if (pull[i] == 0.0) continue;
      gradient(static_cast<Eigen::Index>(i)) += tension * pull[i];
      for (std::size_t j = 0; j < pull.size(); ++j) curvature[i][j] += pull[i] * pull[j] / give;
    }
  }
  Newton<bodies> newton;
  Eigen::LLT<Matrix<bodies>> factored;
  newton.plain = made_a_bowl<bodies>(curvature, factored) == 0.0;
  newton.step = factored.solve(-gradient);
  newton.wanted = newton.step.norm();
  if (newton.wanted > longest_step) newton.step *= longest_step / newton.wanted;
  newton.slope = gradient.dot(newton.step);
  return newton;
}

}  // namespace

template <std::size_t bodies>
bool is_bowl(const Curvature<bodies>& curvature) {
  return curves_up<bodies>(cholesky<bodies>(curvature));
}

template <std::size_t bodies>
double make_bowl(Curvature<bodies>& curvature) {
  Eigen::LLT<Matrix<bodies>> factored;
  return made_a_bowl<bodies>(curvature, factored);
}

template <std::size_t bodies>
void go_downhill(const RopeSystem<bodies>& system, Attitude<bodies>& at, const Descent& descent) {
  double energy = energy_of(system, at, descent);
  for (int count = 0; count < 300; ++count) {
    Newton<bodies> to = newton(system, at, descent);
    if (!(to.wanted > 0.0) || !std::isfinite(to.wanted)) return;
    for (int cut = 0;; ++cut) {
      Move<bodies> move;
      Eigen::Map<Column<bodies>>(move.data()) = to.step;
      const Attitude<bodies> next = moved(system, at, move);
      const double next_energy = energy_of(system, next, descent);
      if (next_energy <= energy + enough * to.slope) {
        at = next;
        energy = next_energy;
        break;
      }
      if (cut == 20) return;  // nothing lower within rounding
      to.step *= shorter;
      to.slope *= shorter;
    }
    if (to.wanted < (to.plain ? descent.close : flat * descent.close)) return;
  }
}

#define FIRSTPICK_FOR(n) \
  template void go_downhill<n>(const RopeSystem<n>&, Attitude<n>&, const Descent&); \
  template double make_bowl<n>(Curvature<n>&); \
  template bool is_bowl<n>(const Curvature<n>&);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
