// A sheave pulls where it hangs with no more than its plate says.
//
//   T <= rated        T: tension of the leg to the sheave, the largest over all load sets and sharings
//
// Source   statics: the leg carries both parts of the rope and the sheave's own weight. A link is held the same way. The
//          sheaves at the hook of `equalised` groups: T is the sum of the parts of the rope, never less than what they pull
//          together.
// Absent   no rating from the plate, no weight: HOLD.

#include "checks/carrier_overload.hpp"
#include "checks/rule.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

Force pull_of_legs(const StageFacts& facts, const Situation& situation, std::size_t carrier) {
  Force sum{};
  for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i) {
    const plan::Leg& leg = facts.rigging->legs[i];
    const auto end = plan::carrier_end(*facts.rigging, leg.to);
    if (end && end->carrier == carrier) sum += situation.legs.at(i).tension;
  }
  return sum;
}

Force pull_of_group(const StageFacts& facts, const Situation& situation, std::size_t group) {
  Force sum{};
  for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i)
    for (const auto& member : facts.rigging->equalised[group])
      if (facts.rigging->legs[i].to == member.value) sum += situation.legs.at(i).tension;
  return sum;
}

}  // namespace

std::vector<Finding> sheave_overload(const StageFacts& facts, Trace& trace) {
  constexpr CarrierRule rule{"sheave-overload", "sheave", "pulls", pull_of_legs};
  constexpr CarrierRule link{"sheave-overload", "link", "pulls", pull_of_legs};
  constexpr CarrierRule at_hook{"sheave-overload", "sheave at the hook", "pulls", pull_of_group, "[[rigging]] equaliser_rated = \"...\""};
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  for (std::size_t i = 0; i < facts.rigging->sheaves.size(); ++i) {
    const plan::Sheave& sheave = facts.rigging->sheaves[i];
    findings.push_back(carrier_finding(sheave.rolls ? rule : link, facts, facts.rigging->beams.size() + i, sheave.id,
                                       sheave.rated, trace));
  }
  for (std::size_t group = 0; group < facts.rigging->equalised.size(); ++group) {
    const auto& rope = facts.rigging->equalised[group];
    if (rope.size() < 2) continue;
    findings.push_back(carrier_finding(at_hook, facts, group, plan::sheave_at_hook(rope),
                                       facts.rigging->equaliser_rated, trace));
  }
  return findings;
}

}  // namespace firstpick::checks
