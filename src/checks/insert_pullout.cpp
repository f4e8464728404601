// The head does not pull through the concrete.
//
// Formula  resistances/pullout.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.6.3. Rule page: docs/rules/insert-pullout.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_pullout(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-pullout",
                                 .mode = Mode::pullout,
                                 .clause = "ACI 318-19 17.6.3",
                                 .fails = "the head pulls through the concrete",
                                 .remedy = "more strength before lifting, or a larger head"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
