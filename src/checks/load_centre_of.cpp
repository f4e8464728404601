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

Outcome<std::vector<Position>> load_centres_of(const StageFacts& facts) {
  const auto with = load_centre_of(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&with)) return *gap;
  std::vector<Position> centres{std::get<Position>(with)};
  if (const auto* load = std::get_if<loads::StageLoad>(&facts.load))
    for (const loads::LoadSet& set : load->gear_loads)
      if (set.name.ends_with(loads::without_form_parts))
        centres.push_back(demands::load_centre({{}, {}, set.loads}).at);
  return centres;
}

}  // namespace firstpick::checks
