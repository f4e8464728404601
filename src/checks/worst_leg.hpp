// The situation that is worst for a leg.
#pragma once

#include <vector>

#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct WorstLeg {
  Force tension{};
  Angle angle_from_horizontal{};
  std::string situation;
};

// The largest tension of leg `leg` over all situations, with its angle there. Not assessed: no situation,
// or a tension that is no number in any of them.
Outcome<WorstLeg> most_tension(const Outcome<std::vector<Situation>>& situations, std::size_t leg);

// The flattest that leg `leg` lies in any situation.
Outcome<Angle> flattest(const Outcome<std::vector<Situation>>& situations, std::size_t leg);

}  // namespace firstpick::checks
