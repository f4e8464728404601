// The strength test belongs to this pour and to this lift: tested after the cast, before the lift, not too long ago.
//
// Source   strength/evidence_age.cpp. Out of order, out of date or not stated: HOLD. No limit stated: a note says so.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "strength/evidence_age.hpp"

namespace firstpick::checks {

std::vector<Finding> evidence_age(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "evidence-age";
  const std::string& mark = facts.plan.piece.mark;
  const auto age = strength::evidence_age(facts.plan.concrete, facts.stage, facts.rules, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&age)) return {missing(id, mark, gap->why, gap->remedy)};
  const auto& known = std::get<strength::EvidenceAge>(age);
  if (!known.note.empty()) return {noted(id, mark, known.note)};
  Finding finding = passed(id, mark);
  finding.demand = known.since_test;
  finding.capacity = known.limit;
  return {finding};
}

}  // namespace firstpick::checks
