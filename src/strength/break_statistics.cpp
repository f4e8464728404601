// Mean, range and scatter of specimen results, and the limit on the range.
//
//   m = sum f_i / n      s = sqrt(sum (f_i - m)^2 / (n - 1))      r = (max f_i - min f_i) / m <= r_max
//
// Source   r_max: entries range_of_two, range_of_three of tables/specimens.toml (ASTM C39, from memory).
// f_i      results of one pour and one kind of specimen.
// Range    r_max is known of two and of three results of some cylinders. A wide range is told, with the result
//          that lies farthest from the mean; no result is ever left out for it.

#include "strength/break_statistics.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "strength/specimen.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

Outcome<BreakStatistics> break_statistics(const std::vector<Stress>& results) {
  if (results.empty()) return NotAssessed{"there are no results", {}};
  for (const Stress& result : results)
    if (!(result > Stress{}) || !is_finite(result))
      return NotAssessed{"a result of the specimens is not a usable number", {}};

  // Sorted, so that the sum does not depend on the order in which the results are written.
  std::vector<Stress> sorted = results;
  std::ranges::sort(sorted);
  const auto n = static_cast<double>(sorted.size());
  Stress sum{};
  for (const Stress& result : sorted) sum += result;
  BreakStatistics of{.n = sorted.size(), .mean = sum / n, .lowest = sorted.front(), .highest = sorted.back()};
  of.range = of.highest - of.lowest;
  of.relative_range = of.range / of.mean;
  if (sorted.size() > 1) {
    auto squares = Stress{} * Stress{};
    for (const Stress& result : sorted) squares += (result - of.mean) * (result - of.mean);
    of.deviation = root(squares / (n - 1.0));
  }
  const auto off = [&](const Stress& result) { return std::abs(in(Pa, result - of.mean)); };
  of.farthest = static_cast<std::size_t>(std::ranges::max_element(results, {}, off) - results.begin());
  return of;
}

Outcome<Sourced<Ratio>> range_limit(const plan::Specimen& specimen, std::size_t n, const tables::Tables& tables) {
  const tables::SpecimenKind* kind = kind_of(specimen, tables);
  if (n != 2 && n != 3)
    return NotAssessed{fmt::format("how far {} results may lie apart is not known, only two and three", n), {}};
  const std::optional<Sourced<Ratio>> limit = !kind    ? std::nullopt
                                              : n == 2 ? kind->range_of_two
                                                       : kind->range_of_three;
  if (!limit)
    return NotAssessed{fmt::format("the tables do not say how far results of {} may lie apart",
                                   plural_words_for(specimen)),
                       {}};
  const Ratio most = limit->value;
  if (!(most > Ratio{}) || !is_finite(most))
    return NotAssessed{"the limit on the range of the results in the tables is not a usable number", {}};
  return *limit;
}

std::string wide_range_text(const plan::Evidence& evidence, const tables::Tables& tables) {
  const auto found = break_statistics(evidence.results);
  if (!is_assessed(found) || !evidence.specimen) return {};
  const auto& of = std::get<BreakStatistics>(found);
  const auto limit = range_limit(*evidence.specimen, of.n, tables);
  if (!is_assessed(limit)) return {};
  const Ratio most = std::get<Sourced<Ratio>>(limit).value;
  if (of.relative_range <= most) return {};
  return fmt::format(
      "the {} results lie {} % of their mean apart, more than the {} % of one sample: result {}, {}, is farthest "
      "from the mean; every result counts",
      of.n, print_number(100.0 * of.relative_range.value(), 3, Rounding::up),
      print_number(100.0 * most.value(), 3), of.farthest + 1,
      print(evidence.results[of.farthest], UnitSystem::si));
}

}  // namespace firstpick::strength
