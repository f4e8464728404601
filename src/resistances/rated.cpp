// The load at which an insert fails by its supplier's declaration, at the strength of this lift.
//
//   ultimate = declared load * factor that it includes
//   usable strength below the one it is declared at: times f / f_at, or times sqrt(f / f_at), by the rule set
//   or, where the rule set holds to what is declared: not assessed below it
//   usable strength above it: not more
//
// Source   the supplier's declaration in the plan. Scaling is a choice of the rule set ("rating_scaling").
// Absent   the strength or the factor of the declaration: not assessed. Neither has a usual value.

#include "resistances/rated.hpp"

#include <cmath>

#include <fmt/format.h>

#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"
#include "units/print.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> rated(const plan::Insert& insert, Stress usable, const tables::RuleSet& rules,
                                 Trace& trace) {
  if (!insert.rating)
    return NotAssessed{
        fmt::format("insert {} has no rating", insert.id),
        "[[insert]] rating = { load = \"...\", at_strength = \"...\", includes_factor = ... }"};
  const plan::Rating& rating = *insert.rating;
  if (!rating.at_strength)
    return NotAssessed{
        fmt::format("the rating of insert {} does not say at which concrete strength it holds", insert.id),
        "rating = { at_strength = \"...\" }, from the supplier's declaration"};
  if (!rating.includes_factor)
    return NotAssessed{
        fmt::format("the rating of insert {} does not say which factor on failure it includes", insert.id),
        "rating = { includes_factor = ... }, from the supplier's declaration"};
  const Stress at = *rating.at_strength;
  const double factor = *rating.includes_factor;
  if (!is_usable(rating.load) || !is_usable(at) || !std::isfinite(factor) || !(factor >= 1.0))
    return NotAssessed{fmt::format("the rating of insert {} is not described by usable numbers", insert.id),
                       {}};
  if (!is_usable(usable)) return NotAssessed{"the concrete strength is not a number above zero", {}};

  const bool weaker = usable < at;
  if (weaker && rules.rating_scaling.value == tables::RatingScaling::as_declared) {
    const bool has_lower = rules.rating_basis && at > rules.rating_basis->value;
    return NotAssessed{
        fmt::format("the rating of insert {} is declared for {}, and the concrete has {}", insert.id,
                    print(at, UnitSystem::si, Rounding::up), print(usable, UnitSystem::si, Rounding::down)),
        has_lower ? fmt::format("the capacity that its supplier declares for {}, or more strength before lifting",
                                print(rules.rating_basis->value, UnitSystem::si))
                  : "more strength before lifting, or a capacity that the supplier declares for this strength"};
  }
  const bool by_root = rules.rating_scaling.value == tables::RatingScaling::square_root;
  const double scale = !weaker ? 1.0 : by_root ? std::sqrt(usable / at) : double{usable / at};
  const Force ultimate = rating.load * factor * scale;
  if (!is_usable(ultimate))
    return NotAssessed{fmt::format("the rating of insert {} is not described by usable numbers", insert.id),
                       {}};
  trace.add([&] {
    return Step{.words = fmt::format("load at which insert {} fails by its declaration, {}", insert.id,
                                     weaker ? "lowered to the strength of this lift" : "as declared"),
                .result = term_of(rules.headed, "U", ultimate),
                .formula = !weaker   ? "P * n_P"
                           : by_root ? "P * n_P * sqrt(f / f_at)"
                                     : "P * n_P * f / f_at",
                .given = {term_of(rules.headed, "P", rating.load), term_of(rules.headed, "n_P", Ratio{factor}), term_of(rules.headed, "f", usable),
                          term_of(rules.headed, "f_at", at)},
                .clause = "supplier's declaration",
                .sources = {rules.rating_scaling.source}};
  });
  return Resistance<Force>{ultimate};
}

}  // namespace firstpick::resistances
