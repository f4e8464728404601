// Shear does not pry a short insert out backwards.
//
// Formula  resistances/pryout.cpp; nominal strength over the insert factor of the rule set.
// Source   ACI 318-19 17.7.3. Rule page: docs/rules/insert-pryout.md.

#include "checks/insert_mode_findings.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_pryout(const StageFacts& facts, Trace& trace) {
  static constexpr ModeRule rule{.id = "insert-pryout",
                                 .mode = Mode::pryout,
                                 .clause = "ACI 318-19 17.7.3",
                                 .fails = "shear pries the insert out",
                                 .remedy = "steeper legs, a deeper insert, or more strength before lifting"};
  return findings_of(rule, facts, trace);
}

}  // namespace firstpick::checks
