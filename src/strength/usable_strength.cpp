// The concrete strength that the plan's own specimens show, as cylinder strength.
//
//   f_c = c f_low               or c times the mean or bound that the rule set counts: counted_strength.cpp
//
// Source   specimens cured with the structure are what shows the strength at form removal: ASTM C31/C31M-24b
//          4.3. What counts of them: a choice of the rule set. c: tables/specimens.toml, see specimen.cpp.
// f_i      results of this pour, of one kind of specimen, field-cured or match-cured.
// Range    at least the rule set's number of results, no farther apart than its widest range. Standard-cured specimens tell the mix, not the piece in
//          its form.

#include <fmt/format.h>

#include "strength/break_statistics.hpp"
#include "strength/counted_strength.hpp"
#include "strength/specimen.hpp"
#include "strength/strength_at_lift.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

NotAssessed no_evidence() {
  return {"no strength test of this piece is in the plan",
          "write [concrete.evidence] with specimen, cure, cast, tested and results"};
}

// Why the evidence cannot carry a lift, whatever its results are.
std::optional<NotAssessed> fault_of(const plan::Evidence& evidence, const tables::RuleSet& rules) {
  const std::string where = fmt::format("in {}", evidence.section);
  if (evidence.results.empty())
    return NotAssessed{"the strength evidence has no results", fmt::format("write results {}", where)};
  if (!evidence.specimen)
    return NotAssessed{"the kind of specimen is not stated",
                       fmt::format("write specimen {}, in the form \"cylinder 4x8 in\"", where)};
  if (!evidence.cure)
    return NotAssessed{"how the specimens were cured is not stated",
                       fmt::format("write cure {}: field, match or standard", where)};
  if (*evidence.cure == plan::Cure::standard)
    return NotAssessed{"standard-cured specimens tell the mix, not the piece in its form",
                       "test specimens cured with the piece: cure = \"field\" or \"match\""};
  const double needed = rules.minimum_results.value.value();
  if (!(static_cast<double>(evidence.results.size()) >= needed))
    return NotAssessed{
        fmt::format("{} of the {:g} results that the rule set asks for", evidence.results.size(), needed),
        fmt::format("test more specimens of this pour and write all results {}", where)};
  for (std::size_t i = 0; i < evidence.results.size(); ++i)
    if (!(evidence.results[i] > Stress{}) || !is_finite(evidence.results[i]))
      return NotAssessed{fmt::format("result {} of the strength evidence is not a usable number", i + 1),
                         fmt::format("write results {}, each above zero", where)};
  return {};
}

// Whatever counts of them: results so far apart are not of one concrete.
std::optional<NotAssessed> too_far_apart(const plan::Evidence& evidence, const tables::RuleSet& rules) {
  const auto statistics = break_statistics(evidence.results);
  if (const auto* gap = std::get_if<NotAssessed>(&statistics)) return *gap;
  const Ratio range = std::get<BreakStatistics>(statistics).relative_range, most = rules.widest_range.value;
  if (range <= most) return {};
  return NotAssessed{fmt::format("the results lie {} % of their mean apart, more than {:g} %: they are not of one "
                                 "concrete",
                                 print_number(100.0 * range.value(), 3, Rounding::up), 100.0 * most.value()),
                     "find out which specimens are of this pour, or test others"};
}

}  // namespace

Outcome<Stress> usable_strength(const plan::Concrete& concrete, const tables::RuleSet& rules,
                                const tables::Tables& tables, Trace& trace) {
  if (!concrete.evidence) return no_evidence();
  const plan::Evidence& evidence = *concrete.evidence;
  if (const auto fault = fault_of(evidence, rules)) return *fault;
  if (const auto fault = too_far_apart(evidence, rules)) return *fault;
  const Outcome<Sourced<Ratio>> conversion = to_cylinder(*evidence.specimen, tables);
  if (const auto* missing = std::get_if<NotAssessed>(&conversion)) return *missing;
  const auto& [c, source] = std::get<Sourced<Ratio>>(conversion);

  const auto counted = counted_strength(evidence, rules, tables, trace);
  if (const auto* missing = std::get_if<NotAssessed>(&counted)) return *missing;
  const auto& [f, symbol] = std::get<CountedStrength>(counted);

  const Stress f_c = c * f;
  trace.add([&, &c = c, &source = source, &f = f, &symbol = symbol] {
    return Step{.words = fmt::format("strength that the lift may count on, as cylinder strength, from {}",
                                     plural_words_for(*evidence.specimen)),
                .result = {"f_c", in(MPa, f_c), "MPa"},
                .formula = fmt::format("c * {}", symbol),
                .given = {{"c", c.value(), "1"}, {std::string(symbol), in(MPa, f), "MPa"}},
                .sources = {source}};
  });
  return f_c;
}

}  // namespace firstpick::strength
