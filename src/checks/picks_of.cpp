#include "checks/picks_of.hpp"

#include <algorithm>

namespace firstpick::checks {

std::vector<Position> picks_of(const StageFacts& facts) {
  std::vector<Position> picks;
  if (!facts.rigging) return picks;
  const auto place = [&](const std::string& id) {
    const auto insert = std::ranges::find(facts.plan.inserts, id, &plan::Insert::id);
    return insert == facts.plan.inserts.end() ? Position{} : insert->at;
  };
  std::vector<std::string> grouped;
  for (const auto& group : facts.rigging->equalised) {
    Position sum;
    for (const auto& member : group) {
      sum = sum + place(member.value);
      grouped.push_back(member.value);
    }
    if (!group.empty()) picks.push_back((1.0 / static_cast<double>(group.size())) * sum);
  }
  for (const plan::Leg& leg : facts.rigging->legs)
    if (std::ranges::find(grouped, leg.to) == grouped.end()) picks.push_back(place(leg.to));
  return picks;
}

}  // namespace firstpick::checks
