// Shear does not break the concrete off towards an edge.
//
// Formula  resistances/edge_breakout.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.7.2. Rule page: docs/rules/insert-edge-breakout.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_edge_breakout(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-edge-breakout",
                                 .mode = Mode::edge_breakout,
                                 .clause = "ACI 318-19 17.7.2",
                                 .fails = "shear breaks the edge off",
                                 .remedy = "steeper legs or a spreader beam, more distance to the edge, or more strength before lifting"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
