// The cone of concrete around the insert, or around inserts close together, does not break out.
//
// Formula  resistances/breakout.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.6.2. Rule page: docs/rules/insert-breakout.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_breakout(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-breakout",
                                 .mode = Mode::breakout,
                                 .clause = "ACI 318-19 17.6.2",
                                 .fails = "a cone of concrete breaks out",
                                 .remedy = "more strength before lifting, a deeper insert, more distance to edges, or steeper legs"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
