// Factors of one-sided lower bounds of small samples: bound = mean - k x deviation.
#pragma once

#include <cstddef>

#include "record/outcome.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

// EN 1990 annex D: k of the p-fractile, coefficient of variation known. Any n from 1.
// Not assessed: n = 0; p not above 0 and below one half.
Outcome<double> fractile_factor_known(std::size_t n, Ratio p);

// The same, coefficient of variation unknown. Not assessed also below three results, as table D1 has none.
Outcome<double> fractile_factor_unknown(std::size_t n, Ratio p);

// One-sided tolerance bound of a normal sample: at confidence gamma the share 1 - p of all lies above it.
// Not assessed: fewer than two results; p or gamma outside their ranges (gamma from one half to below 1).
Outcome<double> tolerance_factor(std::size_t n, Ratio p, Ratio gamma);

}  // namespace firstpick::strength
