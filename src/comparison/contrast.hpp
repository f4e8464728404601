// Two reports on one piece, held against each other.
#pragma once

#include <span>
#include <vector>

#include "comparison/comparison.hpp"
#include "comparison/one_at_a_time.hpp"

namespace firstpick::comparison {

// Stage by stage; the two reports must be of the same plan. `swapped` may be empty: then no assumption is named.
std::vector<StageContrast> contrast(const checks::Report& first, const checks::Report& other, std::span<const Swapped> swapped);

// The other finding over the first. None where a use is missing, zero or of another kind of quantity.
std::optional<Ratios> ratios_of(const checks::Finding& first, const checks::Finding& other);

}  // namespace firstpick::comparison
