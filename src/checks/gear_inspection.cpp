// Every sling, every piece of hardware and the crane was examined not too long before the lift.
//
//   0 <= day of the lift - day of the examination <= t_insp
//
// Source   "inspection_interval" of the rule set. A clutch link broke at a crack that a test half a year
//          before had not found (docs/rules/gear-inspection.md): the interval is the longest that is allowed,
//          not what is safe.
// Absent   no day of the examination or of the lift, examined after the lift, or too long ago: HOLD.

#include <fmt/format.h>

#include "checks/gear_in_use.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> gear_inspection(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "gear-inspection";
  const auto& interval = facts.rules.inspection_interval;
  const auto& at = facts.stage.at;
  std::vector<Finding> findings;
  trace.add([&] {
    return Step{.words = "longest time from an examination of the gear to the lift",
                .result = {"t_insp", in(hour, interval.value), "h"},
                .formula = {},
                .given = {},
                .clause = interval.source.locator,
                .sources = {interval.source}};
  });
  for (const GearInUse& gear : gear_in_use(facts)) {
    if (!gear.inspected) {
      findings.push_back(
          missing(id, gear.id, "when the gear was last examined is not in the plan",
                  "[[sling]], [[hardware]], [[crane]], beams, sheaves and links: inspected = 2026-01-15, from the record; "
                  "of `equalised` equaliser_inspected"));
      continue;
    }
    if (!at) {
      findings.push_back(
          missing(id, gear.id, "when the lift is to be made is not stated", "write `at` in [[stage]]"));
      continue;
    }
    const double days = static_cast<double>(plan::day_of(*at) - gear.inspected->number);
    if (days < 0.0) {
      findings.push_back(missing(id, gear.id,
                                 fmt::format("{} '{}' was examined on {}, after the lift", gear.section,
                                             gear.id, gear.inspected->text),
                                 "correct `inspected`, or `at` in [[stage]]"));
      continue;
    }
    Finding finding =
        compared<Duration>(id, gear.id, Demand<Duration>{days * day}, Resistance<Duration>{interval.value},
                           1.0, citation(interval.source));
    finding.utilization.reset();  // a date is kept or not: no row of the report is made of it
    if (finding.result == Result::fail) {
      finding.result = Result::missing;  // nothing is known to be broken: nobody has looked
      finding.text = fmt::format("the examination of {} '{}' of {} is overdue", gear.section, gear.id,
                                 gear.inspected->text);
      finding.remedy = "have a competent person examine it, or use other gear";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
