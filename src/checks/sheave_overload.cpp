// A sheave pulls where it hangs with no more than its plate says.
//
//   T <= rated        T: tension of the leg to the sheave, the largest over all load sets and sharings
//
// Source   statics: the leg carries both parts of the rope and the sheave's own weight.
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

}  // namespace

std::vector<Finding> sheave_overload(const StageFacts& facts, Trace& trace) {
  constexpr CarrierRule rule{"sheave-overload", "sheave", "pulls", pull_of_legs};
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  for (std::size_t i = 0; i < facts.rigging->sheaves.size(); ++i) {
    const plan::Sheave& sheave = facts.rigging->sheaves[i];
    findings.push_back(carrier_finding(rule, facts, facts.rigging->beams.size() + i, sheave.id, sheave.rated, trace));
  }
  return findings;
}

}  // namespace firstpick::checks
