// What a set of specimen results says as a sample: mean, range, scatter, and the result that lies farthest off.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/source.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct BreakStatistics {
  std::size_t n = 0;
  Stress mean{}, lowest{}, highest{}, range{};
  Ratio relative_range{};            // range over mean
  std::optional<Stress> deviation;   // with n - 1; none of a single result
  std::size_t farthest = 0;          // index of the result farthest from the mean, the first of several
};

// Not assessed: no results; a result that is not positive and finite. The order of the results changes
// nothing but `farthest`.
Outcome<BreakStatistics> break_statistics(const std::vector<Stress>& results);

// The largest relative range that results of one sample of this kind may have.
// Not assessed: neither two nor three results; a kind for which the tables hold no limit.
Outcome<Sourced<Ratio>> range_limit(const plan::Specimen& specimen, std::size_t n, const tables::Tables& tables);

// One sentence where the range is above its limit: how far apart, the limit, which result lies farthest off.
// It is told, never dropped. Empty where the range is within its limit, or no limit is known.
std::string wide_range_text(const plan::Evidence& evidence, const tables::Tables& tables);

}  // namespace firstpick::strength
