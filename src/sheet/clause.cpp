#include "sheet/clause.hpp"

#include <algorithm>

namespace firstpick::sheet {

std::string clause_in_words(const Step& step) {
  if (step.clause.empty()) return {};
  const auto source = std::ranges::find(step.sources, step.clause, &Source::locator);
  return source == step.sources.end() ? step.clause : citation(*source);
}

}  // namespace firstpick::sheet
