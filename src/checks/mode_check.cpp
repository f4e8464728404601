#include "checks/mode_check.hpp"

#include <utility>

namespace firstpick::checks {

NominalForce where_it_occurs(const Outcome<Resistance<Force>>& nominal) {
  if (const auto* gap = std::get_if<NotAssessed>(&nominal)) return *gap;
  return std::optional{std::get<Resistance<Force>>(nominal)};
}

ModeCheck judged(Force demand, const NominalForce& nominal, double factor,
                 std::vector<std::size_t> together) {
  if (const auto* gap = std::get_if<NotAssessed>(&nominal))
    return {.comparison = {Result::missing, {}, gap->why, gap->remedy},
            .demand = demand,
            .together = std::move(together)};
  const auto& limit = std::get<std::optional<Resistance<Force>>>(nominal);
  if (!limit)
    return {.comparison = {.result = Result::pass},
            .demand = demand,
            .applies = false,
            .together = std::move(together)};
  return {.comparison = compare<Force>(Demand<Force>{demand}, behind_factor<Force>(*limit, factor)),
          .demand = demand,
          .nominal = limit->value,
          .together = std::move(together)};
}

ModeCheck missing_mode(const NotAssessed& gap) {
  return {.comparison = {Result::missing, {}, gap.why, gap.remedy}};
}

bool less_severe(const ModeCheck& a, const ModeCheck& b) {
  const auto rank = [](const ModeCheck& c) { return c.comparison.result == Result::missing ? 1 : 0; };
  if (rank(a) != rank(b)) return rank(a) < rank(b);
  return a.comparison.utilization.value_or(-1.0) < b.comparison.utilization.value_or(-1.0);
}

void keep_worse(ModeCheck& worst, const ModeCheck& candidate) {
  if (less_severe(worst, candidate)) worst = candidate;
}

}  // namespace firstpick::checks
