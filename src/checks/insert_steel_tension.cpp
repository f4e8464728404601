// The steel of the insert does not break in tension.
//
// Formula  resistances/steel_tension.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.6.1. Rule page: docs/rules/insert-steel-tension.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_steel_tension(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-steel-tension",
                                 .mode = Mode::steel_tension,
                                 .clause = "ACI 318-19 17.6.1",
                                 .fails = "the steel breaks",
                                 .remedy = "a thicker shank, stronger steel, or steeper legs"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
