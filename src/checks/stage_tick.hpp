// What somebody has to see before a lift, as the plan ticks it off.
#pragma once

#include <string>
#include <string_view>

#include "checks/finding.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

// Passes if true, fails with `wrong` and `mend` if false. Not ticked: missing, in words that are the same for
// every tick that is missing, so that a reader is told once.
Finding ticked(std::string_view rule, const StageFacts& facts, const std::optional<bool>& tick,
               std::string wrong, std::string mend);

}  // namespace firstpick::checks
