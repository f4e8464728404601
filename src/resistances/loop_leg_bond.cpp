// Bond of one leg of a loop along its embedded length.
//
//   strand   R = n_tau tau min(1, f / f_tau) pi d l k      tau: safe uniform bond, with the factor n_tau in it
//   bar      R = beta sqrt(f) pi d l                       f in MPa
//   rope     no bond was read in any source
//
// Source   tables/loops.toml. Two tests of strand recommend 100 and 199 psi, two texts give 0.28 and 0.4 for bars: the
//          lower counts. f of strand is the strength shown, never more than that of the tests; f of a bar is that of the
//          anchor formulas, which falls in proportion below their floor, or is refused, by the rule set.
// Range    strand up to the thickest tested; one bar.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "resistances/loop_leg.hpp"
#include "resistances/loop_strands.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {


struct Bond {
  Stress stress;  // on failure
  Step step;
};

Outcome<Bond> bond_of_strand(const plan::Insert& insert, const LoopFacts& facts, const tables::LoopModel& model) {
  const plan::Loop& loop = *insert.loop;
  if (*loop.diameter > model.strand_diameter.value)
    return NotAssessed{fmt::format("the strand of loop {} is thicker than any that was tested", insert.id), {}};
  if (loop.bond && !facts.documented)
    return NotAssessed{fmt::format("the bond stated for loop {} has no engineer's document behind it", insert.id),
                       "[[insert]] engineers_document = \"...\", or take 'bond' out"};
  const Sourced<Stress>& least = lowest(model.strand_bond);
  const Stress tau = loop.bond.value_or(least.value);
  const Stress f_tau = model.bond_strength.value;
  const Stress bond = model.bond_factor.value * tau * std::min(1.0, double{facts.usable / f_tau});
  Step step{.words = fmt::format("bond of strand of loop {} on failure, {}", insert.id,
                                 loop.bond ? "from the safe bond the engineer states" : "from the lowest safe bond"),
            .result = {"f_b", in(MPa, bond), "MPa"},
            .formula = "n_tau * tau * min(1, f / f_tau)",
            .given = {{"n_tau", model.bond_factor.value.value(), "1"}, {"tau", in(MPa, tau), "MPa"},
                      {"f", in(MPa, facts.usable), "MPa"}, {"f_tau", in(MPa, f_tau), "MPa"}},
            .clause = loop.bond ? "engineer's document" : "tests of loops of strand",
            .sources = {model.bond_factor.source, model.bond_strength.source, model.strand_diameter.source}};
  if (!loop.bond)
    for (const auto& one : model.strand_bond) step.sources.push_back(one.source);
  return Bond{bond, std::move(step)};
}

Outcome<Bond> bond_of_bar(const plan::Insert& insert, const LoopFacts& facts, const tables::LoopModel& model) {
  const plan::Loop& loop = *insert.loop;
  if (loop.strands.value_or(1) != 1)
    return NotAssessed{fmt::format("loop {} has more than one bar, for which no source was read", insert.id),
                       "one bar in a loop"};
  if (loop.bond)
    return NotAssessed{fmt::format("the bond of loop {} is stated, but the formula of a bar takes none", insert.id),
                       "take 'bond' out"};
  const RootStress beta = lowest(model.bar_bond).value;
  const Stress bond = beta * root(facts.formula);
  constexpr double root_pascal_in_root_megapascal = 1000.0;
  Step step{.words = fmt::format("bond of the bar of loop {}", insert.id),
            .result = {"f_b", in(MPa, bond), "MPa"},
            .formula = "beta * sqrt(f)",
            .given = {{"beta", beta.value() / root_pascal_in_root_megapascal, "MPa^0.5"},
                      {"f", in(MPa, facts.formula), "MPa"}},
            .clause = "BS 8110-1 3.12.8.4"};
  for (const auto& one : model.bar_bond) step.sources.push_back(one.source);
  return Bond{bond, std::move(step)};
}

}  // namespace

Outcome<Resistance<Force>> loop_leg_bond(const plan::Insert& insert, const LoopFacts& facts,
                                         const tables::LoopModel& model, Trace& trace) {
  const bool strand = insert.kind == "loop-strand";
  if (!strand && insert.kind != "loop-bar")
    return NotAssessed{fmt::format("no bond of wire rope was found in a source that could be read: loop {}", insert.id),
                       "rating = { ... }, from the supplier's declaration"};
  if (!insert.loop || !insert.loop->diameter || !insert.loop->leg_length)
    return NotAssessed{fmt::format("diameter and embedded length of the legs of loop {} are not both in the plan", insert.id),
                       "[[insert]] loop = { diameter = \"...\", leg_length = \"...\" }"};
  const Length d = *insert.loop->diameter, l = *insert.loop->leg_length;
  if (!is_usable(d) || !is_usable(l) || !is_usable(facts.usable) || !is_usable(facts.formula))
    return NotAssessed{fmt::format("the bond of loop {} is not described by numbers above zero", insert.id), {}};

  const auto found = strand ? bond_of_strand(insert, facts, model) : bond_of_bar(insert, facts, model);
  if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;
  const Bond& bond = std::get<Bond>(found);
  trace.add([&] { return bond.step; });
  const auto times = strand ? strand_multiplier(insert, facts.grip, model, trace) : Outcome<Ratio>{Ratio{1.0}};
  if (const auto* gap = std::get_if<NotAssessed>(&times)) return *gap;
  const Ratio k = std::get<Ratio>(times);
  const Force R = bond.stress * (M_PI * d) * l * k;
  if (!is_usable(R))
    return NotAssessed{fmt::format("the bond of loop {} is not described by numbers above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("bond of one leg of loop {}", insert.id),
                .result = {"R", in(kN, R), "kN"},
                .formula = "f_b * pi * d * l * k / 1000",
                .given = {{"f_b", in(MPa, bond.stress), "MPa"}, {"pi", M_PI, "1"}, {"d", in(mm, d), "mm"},
                          {"l", in(mm, l), "mm"}, {"k", k.value(), "1"}},
                .clause = "uniform bond over the surface of the leg"};
  });
  return Resistance<Force>{R};
}

}  // namespace firstpick::resistances
