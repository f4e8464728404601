// The thin concrete beside a deep head near an edge does not blow out.
//
// Formula  resistances/side_blowout.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.6.4. Rule page: docs/rules/insert-side-blowout.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_side_blowout(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-side-blowout",
                                 .mode = Mode::side_blowout,
                                 .clause = "ACI 318-19 17.6.4",
                                 .fails = "the concrete beside the head blows out",
                                 .remedy = "more distance to the edge, more strength before lifting, or a larger head"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
