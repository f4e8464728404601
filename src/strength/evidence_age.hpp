// Whether the strength test belongs to this pour and to this lift, by the clock.
#pragma once

#include <optional>
#include <string>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct EvidenceAge {
  Duration at_test{};                  // age of the concrete when its specimens were tested
  std::optional<Duration> since_test;  // from the test to the lift, where the stage says when it lifts
  std::optional<Duration> limit;       // the plan's own limit on that
  std::string note;                    // set where the plan limits nothing
};

// Not assessed: no evidence; `cast` or `tested` not stated; tested not after cast, or at an age below the rule
// set's youngest; the lift before the test; a `valid_for` above the rule set's longest;
// the lift later than the test by more than `valid_for`; `valid_for` stated but no time of the lift; moments
// of which some have a zone offset and some have none; a limit that is not positive and finite.
Outcome<EvidenceAge> evidence_age(const plan::Concrete& concrete, const plan::Stage& stage,
                                  const tables::RuleSet& rules, Trace& trace);

// The last moment at which the test may carry a lift, on the clock of `tested`, whole minutes, rounded down.
// Absent: no test, no limit stated, or a limit that evidence_age() refuses.
std::optional<plan::Timestamp> evidence_until(const plan::Concrete& concrete);

}  // namespace firstpick::strength
