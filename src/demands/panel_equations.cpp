#include "demands/panel_equations.hpp"

#include <algorithm>

namespace firstpick::demands {

namespace {

constexpr double least_pivot = 1e-13;  // of the largest

}  // namespace

bool gives_numbers(bool factored, std::span<const double> pivots) {
  double most = 0.0;
  for (const double pivot : pivots) most = std::max(most, pivot);
  return factored && !pivots.empty() && std::ranges::all_of(pivots, [&](double pivot) { return pivot > least_pivot * most; });
}

}  // namespace firstpick::demands
