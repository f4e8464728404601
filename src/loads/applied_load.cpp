// Sum of loads that act straight down, and the line of the calculation that shows it.
//
//   F = F_1 + F_2 + ...        Source: statics

#include "loads/applied_load.hpp"

#include <fmt/format.h>

namespace firstpick::loads {

Force sum_of(const std::vector<AppliedLoad>& loads) {
  Force sum{};
  for (const AppliedLoad& load : loads) sum += load.force;
  return sum;
}

Step sum_step(std::string words, const std::string& symbol, const std::vector<AppliedLoad>& loads) {
  Step step{.words = std::move(words), .result = {symbol, in(kN, sum_of(loads)), "kN"}, .clause = "statics"};
  for (std::size_t i = 0; i < loads.size(); ++i) {
    const std::string part = fmt::format("{}_{}", symbol, i + 1);
    step.formula += (i == 0 ? "" : " + ") + part;
    step.given.push_back({part, in(kN, loads[i].force), "kN"});
  }
  return step;
}

}  // namespace firstpick::loads
