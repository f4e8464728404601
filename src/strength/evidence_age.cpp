// Age of the strength evidence: tested after the pour, before the lift, and within the plan's own limit.
//
//   t_test = tested - cast >= t_young      t_since = lift - tested >= 0      t_since <= t_limit <= t_valid
//
// Source   order of events. ASTM C31/C31M-24b 4.3 has field-cured specimens tell the time of form removal; it
//          is not known here to limit how long a result may be used, so the limit is the plan's own
//          (valid_for), at most the rule set's t_valid; where the plan has none a note says so, and t_valid counts. Concrete gains
//          strength; the limit guards against the papers of another lift. t_young, of the rule set: a test soon
//          after the pour is a wrong time.
// Range    local times are compared as written. Two moments compare only if both or neither carry a zone
//          offset.

#include "strength/evidence_age.hpp"

#include <cmath>

#include <fmt/format.h>

#include "strength/moment_text.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

Duration between(const plan::Timestamp& earlier, const plan::Timestamp& later) {
  return Duration::from_value(static_cast<double>(later.seconds) - static_cast<double>(earlier.seconds));
}

std::optional<NotAssessed> fault_of_test(const plan::Evidence& evidence, const tables::RuleSet& rules) {
  if (!evidence.cast)
    return NotAssessed{"when the piece was cast is not stated", fmt::format("write cast in {}", evidence.section)};
  if (!evidence.tested)
    return NotAssessed{"when the specimens were tested is not stated", fmt::format("write tested in {}", evidence.section)};
  if (evidence.cast->has_offset != evidence.tested->has_offset)
    return NotAssessed{"of `cast` and `tested` one has a zone offset and the other has none",
                       "write both as local time, or both with their offset"};
  if (!(evidence.tested->seconds > evidence.cast->seconds))
    return NotAssessed{
        fmt::format("tested {} is not after cast {}", evidence.tested->text, evidence.cast->text),
        fmt::format("correct cast or tested in {}", evidence.section)};
  const Duration age = between(*evidence.cast, *evidence.tested);
  if (!(age >= rules.youngest_test.value))
    return NotAssessed{fmt::format("the concrete was {} old at its test, and a test younger than {} carries no lift",
                                   print(age, UnitSystem::si, Rounding::down),
                                   print(rules.youngest_test.value, UnitSystem::si)),
                       fmt::format("correct cast or tested in {}, or test again", evidence.section)};
  return {};
}

std::optional<NotAssessed> fault_of_limit(const plan::Evidence& evidence, const plan::Stage& stage,
                                          const tables::RuleSet& rules) {
  if (!evidence.valid_for) return {};
  if (!(*evidence.valid_for > Duration{}) || !is_finite(*evidence.valid_for))
    return NotAssessed{"valid_for of the strength evidence is not a usable number",
                       fmt::format("write valid_for in {}, above zero", evidence.section)};
  if (!(*evidence.valid_for <= rules.longest_valid_for.value))
    return NotAssessed{fmt::format("valid_for is {}, and the rule set lets a test be used for {} at most",
                                   print(*evidence.valid_for, UnitSystem::si, Rounding::up),
                                   print(rules.longest_valid_for.value, UnitSystem::si)),
                       fmt::format("write in {} how long this test may be used", evidence.section)};
  if (!stage.at)
    return NotAssessed{"the evidence is limited by valid_for, but when the lift is to be made is not stated",
                       "write `at` in [[stage]]"};
  return {};
}

std::optional<NotAssessed> fault_of_lift(const plan::Evidence& evidence, const plan::Stage& stage,
                                         const tables::RuleSet& rules) {
  if (!stage.at) return {};
  if (stage.at->has_offset != evidence.tested->has_offset)
    return NotAssessed{"of `tested` and the stage's `at` one has a zone offset and the other has none",
                       "write both as local time, or both with their offset"};
  if (!(stage.at->seconds >= evidence.tested->seconds))
    return NotAssessed{
        fmt::format("the lift at {} is before the test at {}", stage.at->text, evidence.tested->text),
        fmt::format("correct the time of the lift, or tested in {}", evidence.section)};
  const Duration since_test = between(*evidence.tested, *stage.at);
  if (evidence.valid_for && !(since_test <= *evidence.valid_for))
    return NotAssessed{fmt::format("the test is {} old at the lift and was to be used for {}",
                                   print(since_test, UnitSystem::si, Rounding::up),
                                   print(*evidence.valid_for, UnitSystem::si, Rounding::down)),
                       "test again, or lift within valid_for of the test"};
  if (!(since_test <= rules.longest_valid_for.value))
    return NotAssessed{fmt::format("the test is {} old at the lift, and the rule set lets a test be used for {} at most",
                                   print(since_test, UnitSystem::si, Rounding::up),
                                   print(rules.longest_valid_for.value, UnitSystem::si)),
                       fmt::format("test again, and write valid_for in {}", evidence.section)};
  return {};
}

void record(const EvidenceAge& age, const tables::RuleSet& rules, Trace& trace) {
  trace.add([&] {
    return Step{.words = "age of the concrete when its specimens were tested",
                .result = {"t_test", in(hour, age.at_test), "h"},
                .clause = "plan",
                .sources = {rules.youngest_test.source}};
  });
  if (age.since_test)
    trace.add([&] {
      return Step{.words = "time from the test to the lift",
                  .result = {"t_since", in(hour, *age.since_test), "h"},
                  .clause = "plan"};
    });
  if (age.limit)
    trace.add([&] {
      return Step{.words = "longest time from the test to the lift, stated by the plan",
                  .result = {"t_limit", in(hour, *age.limit), "h"},
                  .clause = "plan",
                  .sources = {rules.longest_valid_for.source}};
    });
}

}  // namespace

Outcome<EvidenceAge> evidence_age(const plan::Concrete& concrete, const plan::Stage& stage,
                                  const tables::RuleSet& rules, Trace& trace) {
  if (!concrete.evidence)
    return NotAssessed{"no strength test of this piece is in the plan",
                       "write [concrete.evidence] with specimen, cure, cast, tested and results"};
  const plan::Evidence& evidence = *concrete.evidence;
  if (const auto fault = fault_of_test(evidence, rules)) return *fault;
  if (const auto fault = fault_of_limit(evidence, stage, rules)) return *fault;
  if (const auto fault = fault_of_lift(evidence, stage, rules)) return *fault;

  EvidenceAge age{between(*evidence.cast, *evidence.tested), {}, evidence.valid_for, {}};
  if (stage.at) age.since_test = between(*evidence.tested, *stage.at);
  if (!evidence.valid_for) age.note = "the plan states no limit on the age of the strength evidence";
  record(age, rules, trace);
  return age;
}

std::optional<plan::Timestamp> evidence_until(const plan::Concrete& concrete) {
  if (!concrete.evidence || !concrete.evidence->tested || !concrete.evidence->valid_for) return {};
  const plan::Timestamp& tested = *concrete.evidence->tested;
  const Duration limit = *concrete.evidence->valid_for;
  constexpr Duration longest_told = 366.0 * day;  // beyond, a date would say nothing about a form
  if (!(limit > Duration{}) || !(limit <= longest_told)) return {};
  const long long last = tested.seconds + static_cast<long long>(std::floor(in(second, limit)));
  plan::Timestamp until{.seconds = last - ((last % 60) + 60) % 60,
                        .has_offset = tested.has_offset,
                        .offset_seconds = tested.offset_seconds};
  until.text = words_for_moment(until.seconds, static_cast<int>(tested.offset_seconds / 60));
  if (!tested.has_offset) until.text.resize(until.text.size() - 7);  // without " +00:00"
  return until;
}

}  // namespace firstpick::strength
