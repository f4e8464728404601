// Finds steps of the trace by the symbol of their result.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "record/trace.hpp"

namespace firstpick::tests {

// The last step whose result has this symbol; fails the test where there is none.
inline Step step_named(const Trace& trace, const std::string& symbol) {
  for (auto entry = trace.steps().rbegin(); entry != trace.steps().rend(); ++entry)
    if (entry->step.result.symbol == symbol) return entry->step;
  FAIL("no step gives " << symbol);
  return {};
}

inline bool has_step(const Trace& trace, const std::string& symbol) {
  return std::any_of(trace.steps().begin(), trace.steps().end(),
                     [&](const Trace::Entry& entry) { return entry.step.result.symbol == symbol; });
}

inline std::vector<std::string> source_ids(const Step& step) {
  std::vector<std::string> ids;
  for (const Source& source : step.sources) ids.push_back(source.id);
  return ids;
}

}  // namespace firstpick::tests
