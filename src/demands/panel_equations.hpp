// When the equations of a meshed panel, factored for many loads, give numbers.
//
//   K = P^T L D L^T P     held so that no rigid motion is left: every pivot of D well above rounding of the largest
#pragma once

#include <span>

namespace firstpick::demands {

// `factored`: to the end. `pivots`: D.
bool gives_numbers(bool factored, std::span<const double> pivots);

}  // namespace firstpick::demands
