// The strength to put into the anchor formulas.
//
//   f = min(f_c, f_most)                        not more than the formulas credit
//   f = f_c^2 / f_least      for f_c < f_least  where the rule set lowers in proportion; else not assessed
//
// Source   f_most, f_least: ACI 318-19 chapter 17, entries of the rule set. They do not speak
//          below f_least; one early series of tests on young concrete (1.5 to 10.5 MPa, quoted in a handbook
//          of non-destructive testing) found pull-out in proportion to strength, not to its root.
// Effect   a law in sqrt(f) falls in proportion: sqrt(f_c^2/f_least) = sqrt(f_least) f_c/f_least. A law in f
//          falls with the square of f_c/f_least, more than the tests ask for: on the safe side. Continuous
//          and rising throughout: f = f_least at f_c = f_least, from both sides.

#include <algorithm>

#include <fmt/format.h>

#include "strength/strength_at_lift.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

std::string in_both_units(Stress stress, Rounding rounding) {
  return fmt::format("{} ({})", print(stress, UnitSystem::si, rounding),
                     print(stress, UnitSystem::us, rounding));
}

NotAssessed below_range(Stress usable, Stress least) {
  return {fmt::format("the strength of the concrete, {}, is below {}, the least the anchor formulas cover",
                      in_both_units(usable, Rounding::down), in_both_units(least, Rounding::up)),
          "let the concrete gain strength, or use inserts with a rating declared for this strength"};
}

Stress lowered_in_proportion(Stress usable, const Sourced<Stress>& least, const tables::RuleSet& rules,
                             Trace& trace) {
  const Stress lowered = usable * (usable / least.value);
  trace.add([&] {
    return Step{
        .words = "strength for the anchor formulas, lowered so that a square-root law falls in proportion",
        .result = {"f", in(MPa, lowered), "MPa"},
        .formula = "f_c * f_c / f_least",
        .given = {{"f_c", in(MPa, usable), "MPa"}, {"f_least", in(MPa, least.value), "MPa"}},
        .sources = {least.source, rules.below_floor.source}};
  });
  return lowered;
}

}  // namespace

Outcome<Stress> formula_strength(Stress usable, const tables::RuleSet& rules, Trace& trace) {
  const auto& least = rules.headed.f_c_least;
  const auto& most = rules.headed.f_c_most;
  if (!(usable > Stress{}) || !is_finite(usable))
    return NotAssessed{"the strength of the concrete is not a usable number", {}};
  if (!(least.value > Stress{}) || !(most.value >= least.value) || !is_finite(most.value))
    return NotAssessed{"the strength range of the anchor formulas in the rule set is not usable", {}};

  if (usable < least.value) {
    if (rules.below_floor.value != tables::BelowFloor::proportional) return below_range(usable, least.value);
    return lowered_in_proportion(usable, least, rules, trace);
  }
  const Stress credited = std::min(usable, most.value);
  trace.add([&] {
    return Step{.words = "strength for the anchor formulas, not above what they credit",
                .result = {"f", in(MPa, credited), "MPa"},
                .formula = "min(f_c, f_most)",
                .given = {{"f_c", in(MPa, usable), "MPa"}, {"f_most", in(MPa, most.value), "MPa"}},
                .sources = {most.source}};
  });
  return credited;
}

}  // namespace firstpick::strength
