// What hangs below a lifting beam, spreader or frame is not above its plate.
//
//   V <= rated        V: vertical pull of the legs below it, the largest over all load sets and sharings
//
// Source   statics; 29 CFR 1926.251(a)(4): custom lifting accessories are marked with their safe working load.
// Absent   no rating from the plate, no weight: HOLD.
// Limits   the plate's own conditions (angle of the slings above it, which holes) are not known here.

#include <cmath>

#include "checks/carrier_overload.hpp"
#include "checks/rule.hpp"
#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

Force hanging_below(const StageFacts& facts, const Situation& situation, std::size_t carrier) {
  Force sum{};
  for (std::size_t i = 0; i < facts.rigging->legs.size(); ++i) {
    const plan::Leg& leg = facts.rigging->legs[i];
    const auto end = plan::carrier_end(*facts.rigging, leg.from);
    if (end && end->carrier == carrier)
      sum += situation.legs.at(i).tension * std::sin(in(radian, situation.legs.at(i).angle_from_horizontal));
  }
  return sum;
}

}  // namespace

std::vector<Finding> beam_overload(const StageFacts& facts, Trace& trace) {
  constexpr CarrierRule rule{"beam-overload", "beam", "hangs below", hanging_below};
  std::vector<Finding> findings;
  if (!facts.rigging) return findings;
  for (std::size_t i = 0; i < facts.rigging->beams.size(); ++i) {
    const plan::Beam& beam = facts.rigging->beams[i];
    findings.push_back(carrier_finding(rule, facts, i, beam.id, beam.rated, trace));
  }
  return findings;
}

}  // namespace firstpick::checks
