#include "checks/picks_of.hpp"

#include <algorithm>

#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

// The sheave highest above a leg, by whose rope everything below may run to one side; empty: none. What hangs between
// the two, a beam or another sheave, is as free as the rope. Trees have no circle (plan/rigging_tree.hpp).
std::string sheave_above(const plan::Rigging& rigging, const plan::Leg& leg) {
  const auto end = plan::carrier_end(rigging, leg.from);
  if (!end) return {};
  std::string above;
  for (const plan::Leg& upper : rigging.legs) {
    const auto lower = plan::carrier_end(rigging, upper.to);
    if (!lower || lower->carrier != end->carrier) continue;
    if (std::string higher = sheave_above(rigging, upper); !higher.empty()) above = std::move(higher);
  }
  if (!above.empty() || end->carrier < rigging.beams.size()) return above;
  return rigging.sheaves.at(end->carrier - rigging.beams.size()).id;
}

}  // namespace

std::vector<Position> picks_of(const StageFacts& facts) {
  struct Group {
    std::string rope;  // empty: a leg by itself
    Position sum;
    double legs = 0.0;
  };
  std::vector<Group> groups;
  if (!facts.rigging) return {};
  const plan::Rigging& rigging = *facts.rigging;
  for (const plan::Leg& leg : rigging.legs) {
    const auto insert = std::ranges::find(facts.plan.inserts, leg.to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // to a beam or a sheave
    std::string rope = sheave_above(rigging, leg);
    for (const auto& members : rigging.equalised)
      if (rope.empty() && std::ranges::any_of(members, [&](const auto& member) { return member.value == leg.to; }))
        rope = "to " + members.front().value;
    auto group = std::ranges::find(groups, rope, &Group::rope);
    if (rope.empty() || group == groups.end()) group = groups.insert(groups.end(), {rope, {}, 0.0});
    group->sum = group->sum + insert->at;
    group->legs += 1.0;
  }
  std::vector<Position> picks;
  for (const Group& group : groups) picks.push_back((1.0 / group.legs) * group.sum);
  return picks;
}

}  // namespace firstpick::checks
