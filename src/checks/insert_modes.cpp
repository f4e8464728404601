#include "checks/insert_modes.hpp"

#include <algorithm>

#include "checks/mode_factor.hpp"
#include "checks/modes_alone.hpp"
#include "checks/modes_together.hpp"

namespace firstpick::checks {

ModeCheck check_mode(Mode mode, const StageFacts& facts, const InsertSituation& situation, std::size_t insert,
                     Trace& trace) {
  if (const auto* gap = gap_in(mode, facts, insert)) return missing_mode(*gap);
  ModeCheck worst =
      judged(demand_alone(mode, situation, insert), strength_alone(mode, facts, situation, insert, trace),
             mode_factor(mode, facts, insert));
  for (std::size_t set = 0; set < number_of_sets(mode, facts); ++set) {
    if (std::ranges::find(inserts_of_set(mode, facts, set), insert) == inserts_of_set(mode, facts, set).end())
      continue;
    const LoadedInserts together = taking_part(mode, facts, situation, set);
    if (together.act_together() && together.hold(insert))
      keep_worse(worst, check_together(mode, facts, situation, set, together, trace));
  }
  return worst;
}

}  // namespace firstpick::checks
