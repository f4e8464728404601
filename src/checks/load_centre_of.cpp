#include "checks/load_centre_of.hpp"

#include "demands/imbalance.hpp"

namespace firstpick::checks {

Outcome<Position> load_centre_of(const StageFacts& facts) {
  if (!facts.plan.form || facts.plan.form->attached.empty()) return facts.body.centroid;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.load)) return *gap;
  const auto& sets = std::get<loads::StageLoad>(facts.load).gear_loads;
  if (sets.empty()) return NotAssessed{"no load set acts in this stage", {}};
  return demands::load_centre({{}, {}, sets.front().loads}).at;
}

}  // namespace firstpick::checks
