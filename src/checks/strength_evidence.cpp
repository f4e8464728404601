// A measured strength stands behind the lift.
//
// Source   strength/usable_strength.cpp: what makes evidence usable. Absent or unusable: HOLD.
// Note     results of one sample that lie farther apart than the tables allow are told: the lowest still counts.

#include "checks/rule.hpp"
#include "strength/break_statistics.hpp"

namespace firstpick::checks {

namespace {

// The limit takes part only where it is passed.
void record(const plan::Evidence& evidence, const tables::Tables& tables, Trace& trace) {
  const auto statistics = strength::break_statistics(evidence.results);
  const auto limit = strength::range_limit(*evidence.specimen, evidence.results.size(), tables);
  if (!is_assessed(statistics) || !is_assessed(limit)) return;
  const auto& of = std::get<strength::BreakStatistics>(statistics);
  trace.add([&] {
    return Step{.words = "range of the results over their mean, above that of one sample",
                .result = {"r", of.relative_range.value(), "1"},
                .formula = "(f_max - f_min) / m",
                .given = {{"f_max", in(MPa, of.highest), "MPa"},
                          {"f_min", in(MPa, of.lowest), "MPa"},
                          {"m", in(MPa, of.mean), "MPa"}},
                .sources = {std::get<Sourced<Ratio>>(limit).source}};
  });
}

}  // namespace

std::vector<Finding> strength_evidence(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "strength-evidence";
  const std::string& mark = facts.plan.piece.mark;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.usable_strength))
    return {missing(id, mark, gap->why, gap->remedy)};
  if (!facts.plan.concrete.evidence)  // a strength that is only supposed
    return {missing(id, mark, "no strength test is in the plan", "[concrete.evidence], from a test of this pour")};
  std::string wide = strength::wide_range_text(*facts.plan.concrete.evidence, facts.tables);
  if (!wide.empty()) {
    record(*facts.plan.concrete.evidence, facts.tables, trace);
    return {noted(id, mark, std::move(wide))};
  }
  return {passed(id, mark)};
}

}  // namespace firstpick::checks
