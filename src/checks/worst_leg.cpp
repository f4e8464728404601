#include "checks/worst_leg.hpp"

#include <algorithm>

namespace firstpick::checks {

Outcome<WorstLeg> most_tension(const Outcome<std::vector<Situation>>& situations, std::size_t leg) {
  if (const auto* gap = std::get_if<NotAssessed>(&situations)) return *gap;
  const auto& all = std::get<std::vector<Situation>>(situations);
  const auto worst =
      std::ranges::max_element(all, {}, [leg](const Situation& s) { return s.legs.at(leg).tension.value(); });
  if (worst == all.end()) return NotAssessed{"no situation was computed", {}};
  for (const Situation& s : all)  // a number that compares with nothing must not hide behind the largest
    if (!is_finite(s.legs.at(leg).tension)) return NotAssessed{"a leg's tension is not a usable number", {}};
  return WorstLeg{worst->legs.at(leg).tension, worst->legs.at(leg).angle_from_horizontal, worst->name};
}

Outcome<Angle> flattest(const Outcome<std::vector<Situation>>& situations, std::size_t leg) {
  if (const auto* gap = std::get_if<NotAssessed>(&situations)) return *gap;
  const auto& all = std::get<std::vector<Situation>>(situations);
  if (all.empty()) return NotAssessed{"no situation was computed", {}};
  Angle least = all.front().legs.at(leg).angle_from_horizontal;
  for (const Situation& s : all) {
    const Angle angle = s.legs.at(leg).angle_from_horizontal;
    if (!is_finite(angle)) return NotAssessed{"a leg's angle is not a usable number", {}};
    least = std::min(least, angle);
  }
  return least;
}

}  // namespace firstpick::checks
