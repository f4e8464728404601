// The steel of the insert does not shear off.
//
// Formula  resistances/steel_shear.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.7.1. Rule page: docs/rules/insert-steel-shear.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_steel_shear(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-steel-shear",
                                 .mode = Mode::steel_shear,
                                 .clause = "ACI 318-19 17.7.1",
                                 .fails = "the steel shears off",
                                 .remedy = "a thicker shank, stronger steel, or steeper legs"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
