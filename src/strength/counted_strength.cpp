// Which strength a set of specimen results counts for, by the rule set's choice.
//
//   lowest      f_low = min(f_1, ..., f_n)
//   mean        m = (f_1 + ... + f_n) / n               while (f_max - f_min) / m <= r_max
//   fractile    f_k = m (1 - k V)                       V known, at least that of the results
//               f_k = m - k s                           V not known: s of the results
//   tolerance   f_tol = m - k s
//
//   The last two ask for s > 0: results alike to the last digit show no scatter, and their mean is not its own fractile.
//
// Source   the choice: usable_strength of the rule set. k: lower_bound.cpp, EN 1990 annex D or the tolerance
//          bound of a normal sample. r_max: tables/specimens.toml.
// Range    a bound that is not above zero is no strength. No result is dropped, however far off it lies.

#include "strength/counted_strength.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "strength/break_statistics.hpp"
#include "strength/lower_bound.hpp"

namespace firstpick::strength {

namespace {

using tables::UsableStrength;

struct Given {
  const plan::Evidence& evidence;
  const BreakStatistics of;
  const tables::RuleSet& rules;
  const tables::Tables& tables;
};

std::string symbol_of(std::size_t index) { return fmt::format("f_{}", index + 1); }

// f_1 to f_n, in the order of the plan.
std::vector<Term> results_of(const Given& given) {
  std::vector<Term> terms;
  for (std::size_t i = 0; i < given.of.n; ++i)
    terms.push_back({symbol_of(i), in(MPa, given.evidence.results[i]), "MPa"});
  return terms;
}

template <class WriteTerm>
std::string joined(std::size_t n, const char* between, WriteTerm write) {
  std::string text;
  for (std::size_t i = 0; i < n; ++i) text += (i == 0 ? "" : between) + write(symbol_of(i));
  return text;
}

const auto as_is = [](const std::string& symbol) { return symbol; };

void record_mean(const Given& given, Trace& trace) {
  trace.add([&] {
    return Step{.words = "mean of the results",
                .result = {"m", in(MPa, given.of.mean), "MPa"},
                .formula = fmt::format("({}) / {}", joined(given.of.n, " + ", as_is), given.of.n),
                .given = results_of(given),
                .sources = {given.rules.usable_strength.source, given.rules.minimum_results.source}};
  });
}

void record_deviation(const Given& given, Stress deviation, Trace& trace) {
  trace.add([&] {
    const auto squared = [](const std::string& symbol) { return fmt::format("({} - m)^2", symbol); };
    Step step{.words = "standard deviation of the results",
              .result = {"s", in(MPa, deviation), "MPa"},
              .formula = fmt::format("sqrt(({}) / {})", joined(given.of.n, " + ", squared), given.of.n - 1),
              .given = results_of(given)};
    step.given.push_back({"m", in(MPa, given.of.mean), "MPa"});
    return step;
  });
}

CountedStrength lowest_of(const Given& given, Trace& trace) {
  trace.add([&] {
    const std::string list = joined(given.of.n, ", ", as_is);
    return Step{.words = "lowest of the results",
                .result = {"f_low", in(MPa, given.of.lowest), "MPa"},
                .formula = given.of.n == 1 ? list : fmt::format("min({})", list),
                .given = results_of(given),
                .sources = {given.rules.usable_strength.source, given.rules.minimum_results.source}};
  });
  return {given.of.lowest, "f_low"};
}

Outcome<CountedStrength> mean_of(const Given& given, Trace& trace) {
  const auto limit = range_limit(*given.evidence.specimen, given.of.n, given.tables);
  if (const auto* gap = std::get_if<NotAssessed>(&limit))
    return NotAssessed{"the rule set takes the mean of the results, and " + gap->why,
                       "use a rule set that takes the lowest result"};
  const auto& [r_max, source] = std::get<Sourced<Ratio>>(limit);
  if (!(given.of.relative_range <= r_max))
    return NotAssessed{"the rule set takes the mean of the results, and " +
                           wide_range_text(given.evidence, given.tables),
                       "test more specimens of this pour, or use a rule set that takes the lowest result"};
  record_mean(given, trace);
  trace.add([&, &r_max = r_max, &source = source] {
    return Step{.words = fmt::format("range of the results over their mean, not more than {:g} %",
                                     100.0 * r_max.value()),
                .result = {"r", given.of.relative_range.value(), "1"},
                .formula = "(f_max - f_min) / m",
                .given = {{"f_max", in(MPa, given.of.highest), "MPa"},
                          {"f_min", in(MPa, given.of.lowest), "MPa"},
                          {"m", in(MPa, given.of.mean), "MPa"}},
                .sources = {source}};
  });
  return CountedStrength{given.of.mean, "m"};
}

Outcome<CountedStrength> known_fractile_of(const Given& given, Trace& trace) {
  const Ratio known = given.rules.known_variation.value;
  if (!(known > Ratio{}) || !is_finite(known))
    return NotAssessed{"the known variation of the rule set is not a usable number", {}};
  const auto k = fractile_factor_known(given.of.n, given.rules.fractile.value);
  if (const auto* gap = std::get_if<NotAssessed>(&k)) return *gap;

  const Ratio shown = given.of.deviation ? Ratio{*given.of.deviation / given.of.mean} : Ratio{};
  const Ratio variation = std::max(known, shown);
  const double factor = std::get<double>(k);
  const Stress bound = given.of.mean * (1.0 - factor * variation.value());
  record_mean(given, trace);
  trace.add([&] {
    return Step{.words = "coefficient of variation: the known one, not below that of the results",
                .result = {"V", variation.value(), "1"},
                .formula = "max(V_x, V_n)",
                .given = {{"V_x", known.value(), "1"}, {"V_n", shown.value(), "1"}},
                .sources = {given.rules.known_variation.source}};
  });
  trace.add([&] {
    return Step{.words = "fractile, variation known",
                .result = {"f_k", in(MPa, bound), "MPa"},
                .formula = "m * (1 - k * V)",
                .given = {{"m", in(MPa, given.of.mean), "MPa"}, {"k", factor, "1"}, {"V", variation.value(), "1"}},
                .clause = "EN 1990 annex D",
                .sources = {given.rules.fractile.source}};
  });
  return CountedStrength{bound, "f_k"};
}

Outcome<CountedStrength> bound_by_deviation(const Given& given, const Outcome<double>& k, std::string_view symbol,
                                            Step step, Trace& trace) {
  if (const auto* gap = std::get_if<NotAssessed>(&k)) return *gap;
  if (!given.of.deviation) return NotAssessed{"one result has no scatter", "test more specimens of this pour"};
  if (!(given.of.highest > given.of.lowest))
    return NotAssessed{fmt::format("the {} results are alike to the last digit: a scatter of zero proves nothing, and "
                                   "the {} would be their mean",
                                   given.of.n, words_for_choice(given.rules)),
                       "write each result as the machine gave it, or test more specimens of this pour"};
  const double factor = std::get<double>(k);
  const Stress bound = given.of.mean - factor * *given.of.deviation;
  record_mean(given, trace);
  record_deviation(given, *given.of.deviation, trace);
  trace.add([&] {
    step.result = {std::string(symbol), in(MPa, bound), "MPa"};
    step.formula = "m - k * s";
    step.given = {{"m", in(MPa, given.of.mean), "MPa"}, {"k", factor, "1"}, {"s", in(MPa, *given.of.deviation), "MPa"}};
    return step;
  });
  return CountedStrength{bound, symbol};
}

Outcome<CountedStrength> chosen(const Given& given, Trace& trace) {
  const tables::RuleSet& rules = given.rules;
  switch (rules.usable_strength.value) {
    case UsableStrength::lowest: return lowest_of(given, trace);
    case UsableStrength::mean: return mean_of(given, trace);
    case UsableStrength::fractile_variation_known: return known_fractile_of(given, trace);
    case UsableStrength::fractile_variation_unknown:
      return bound_by_deviation(given, fractile_factor_unknown(given.of.n, rules.fractile.value), "f_k",
                                {.words = "fractile, variation not known",
                                 .result = {},
                                 .clause = "EN 1990 annex D",
                                 .sources = {rules.fractile.source}},
                                trace);
    case UsableStrength::tolerance_bound:
      return bound_by_deviation(
          given, tolerance_factor(given.of.n, rules.fractile.value, rules.tolerance_confidence.value), "f_tol",
          {.words = "one-sided tolerance bound of a normal sample",
           .result = {},
           .sources = {rules.fractile.source, rules.tolerance_confidence.source}},
          trace);
  }
  return NotAssessed{"the rule set does not say which of the results counts", {}};
}

}  // namespace

Outcome<CountedStrength> counted_strength(const plan::Evidence& evidence, const tables::RuleSet& rules,
                                          const tables::Tables& tables, Trace& trace) {
  const auto statistics = break_statistics(evidence.results);
  if (const auto* gap = std::get_if<NotAssessed>(&statistics)) return *gap;
  if (!evidence.specimen) return NotAssessed{"the kind of specimen is not stated", {}};

  const Given given{evidence, std::get<BreakStatistics>(statistics), rules, tables};
  Outcome<CountedStrength> counted = chosen(given, trace);
  if (const auto* found = std::get_if<CountedStrength>(&counted); found && !(found->value > Stress{}))
    return NotAssessed{fmt::format("the {} of the results is not above zero", words_for_choice(rules)),
                       "test more specimens of this pour"};
  return counted;
}

std::string words_for_choice(const tables::RuleSet& rules) {
  const double percent = 100.0 * rules.fractile.value.value();
  switch (rules.usable_strength.value) {
    case UsableStrength::lowest: return "lowest";
    case UsableStrength::mean: return "mean";
    case UsableStrength::fractile_variation_known:
      return fmt::format("EN 1990 {:g} % fractile, variation known,", percent);
    case UsableStrength::fractile_variation_unknown:
      return fmt::format("EN 1990 {:g} % fractile, variation unknown,", percent);
    case UsableStrength::tolerance_bound:
      return fmt::format("tolerance bound of the {:g} % fractile at {:g} % confidence", percent,
                         100.0 * rules.tolerance_confidence.value.value());
  }
  return "";
}

}  // namespace firstpick::strength
