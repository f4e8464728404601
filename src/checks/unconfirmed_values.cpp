#include "checks/unconfirmed_values.hpp"

#include <algorithm>
#include <set>
#include <string>

namespace firstpick::checks {

std::vector<Source> unconfirmed_in(const Trace& trace) {
  std::vector<Source> found;
  std::set<std::string> seen;
  for (const Trace::Entry& entry : trace.steps())
    for (const Source& source : entry.step.sources)
      if (source.unconfirmed() && seen.insert(source.id).second) found.push_back(source);
  std::ranges::sort(found, {}, &Source::id);
  return found;
}

}  // namespace firstpick::checks
