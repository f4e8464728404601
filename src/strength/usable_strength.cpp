// The concrete strength that the plan's own specimens show, as cylinder strength.
//
//   f_low = min(f_1, ..., f_n)      f_c = c f_low
//
// Source   specimens cured with the structure are what shows the strength at form removal: ASTM C31/C31M-24b
//          4.3. Lowest: a choice of the rule set. c: tables/specimens.toml, see specimen.cpp.
// f_i      results of this pour, of one kind of specimen, field-cured or match-cured.
// Range    at least the rule set's number of results. Standard-cured specimens tell the mix, not the piece in
//          its form.
// Mean     refused: a mean counts only while the results lie close together, and no limit on how far
//          apart they may lie is in the tables with a source that was read.

#include <algorithm>

#include <fmt/format.h>

#include "strength/specimen.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::strength {

namespace {

const char* const where = "in [concrete.evidence]";

NotAssessed no_evidence() {
  return {"no strength test of this piece is in the plan",
          "write [concrete.evidence] with specimen, cure, cast, tested and results"};
}

// Why the evidence cannot carry a lift, whatever its results are.
std::optional<NotAssessed> fault_of(const plan::Evidence& evidence, const tables::RuleSet& rules) {
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

Step lowest_of(const std::vector<Stress>& results, Stress lowest, const tables::RuleSet& rules) {
  Step step{.words = "lowest of the results",
            .result = {"f_low", in(MPa, lowest), "MPa"},
            .sources = {rules.usable_strength.source, rules.minimum_results.source}};
  std::string list;
  for (std::size_t i = 0; i < results.size(); ++i) {
    const std::string symbol = fmt::format("f_{}", i + 1);
    list += (i == 0 ? "" : ", ") + symbol;
    step.given.push_back({symbol, in(MPa, results[i]), "MPa"});
  }
  step.formula = results.size() == 1 ? list : fmt::format("min({})", list);
  return step;
}

}  // namespace

Outcome<Stress> usable_strength(const plan::Concrete& concrete, const tables::RuleSet& rules,
                                const tables::Tables& tables, Trace& trace) {
  if (!concrete.evidence) return no_evidence();
  const plan::Evidence& evidence = *concrete.evidence;
  if (const auto fault = fault_of(evidence, rules)) return *fault;
  if (rules.usable_strength.value != tables::UsableStrength::lowest)
    return NotAssessed{
        "the rule set asks for the mean of the results, but no sourced limit says how far apart they "
        "may lie for a mean to count",
        "use a rule set that takes the lowest result"};
  const Outcome<Sourced<Ratio>> conversion = to_cylinder(*evidence.specimen, tables);
  if (const auto* missing = std::get_if<NotAssessed>(&conversion)) return *missing;
  const auto& [c, source] = std::get<Sourced<Ratio>>(conversion);

  const Stress lowest = *std::ranges::min_element(evidence.results);
  const Stress f_c = c * lowest;
  trace.add([&] { return lowest_of(evidence.results, lowest, rules); });
  trace.add([&, &c = c, &source = source] {
    return Step{.words = fmt::format("strength that the lift may count on, as cylinder strength, from {}",
                                     plural_words_for(*evidence.specimen)),
                .result = {"f_c", in(MPa, f_c), "MPa"},
                .formula = "c * f_low",
                .given = {{"c", c.value(), "1"}, {"f_low", in(MPa, lowest), "MPa"}},
                .sources = {source}};
  });
  return f_c;
}

}  // namespace firstpick::strength
