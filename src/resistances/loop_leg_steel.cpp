// Steel of one leg of a loop.
//
//   strand, rope   R = F_br k      F_br: breaking load of one strand or of the rope, from its certificate; k of strands
//   bar            R = pi/4 d^2 min(futa, 1.9 fya, 125 ksi)       by EN 1992-4: R = A_s f_uk, without a limit on f_uk
//
// Source   the certificate in the plan; k as in loop_strands.cpp; the limits on the strength of steel: ACI 318-19 17.6.1.2, or
//          none where the rule set names EN 1992-4 (7.2.1.3, second-hand).
// Range    the loop above the concrete is bent by what goes through it: rule loop-bend. A rope loses strength there by an
//          amount that no source read gives, so that a rope stands on its supplier's rating alone.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "resistances/loop_leg.hpp"
#include "resistances/loop_strands.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

Outcome<Resistance<Force>> steel_of_strand(const plan::Insert& insert, LoopGrip grip, const tables::LoopModel& model,
                                           Trace& trace) {
  if (!insert.loop || !insert.loop->breaking_load)
    return NotAssessed{fmt::format("the breaking load of the strand of loop {} is not in the plan", insert.id),
                       "[[insert]] loop = { breaking_load = \"...\" } of one strand, from its certificate"};
  const auto times = strand_multiplier(insert, grip, model, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&times)) return *gap;
  const Ratio k = std::get<Ratio>(times);
  const Force F_br = *insert.loop->breaking_load;
  const Force R = k * F_br;
  if (!is_usable(F_br) || !is_usable(R))
    return NotAssessed{fmt::format("the breaking load of loop {} is not a number above zero", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("steel of one leg of loop {}", insert.id),
                .result = {"R", in(kN, R), "kN"},
                .formula = "F_br * k",
                .given = {{"F_br", in(kN, F_br), "kN"}, {"k", k.value(), "1"}},
                .clause = "certificate of the strand"};
  });
  return Resistance<Force>{R};
}

Outcome<Resistance<Force>> steel_of_bar(const plan::Insert& insert, const tables::RuleSet& rules,
                                        const tables::Tables& tables, Trace& trace) {
  if (!insert.loop || !insert.loop->diameter || insert.steel.empty())
    return NotAssessed{fmt::format("diameter and steel of the bar of loop {} are not both in the plan", insert.id),
                       "[[insert]] steel = \"...\", loop = { diameter = \"...\" }"};
  if (insert.loop->strands.value_or(1) != 1)
    return NotAssessed{fmt::format("loop {} has more than one bar, for which no source was read", insert.id),
                       "one bar in a loop"};
  const auto steel = tables.steels.find(insert.steel);
  if (steel == tables.steels.end())
    return NotAssessed{fmt::format("the steel '{}' of loop {} is not in tables/steels.toml", insert.steel, insert.id),
                       "[[insert]] steel = a key of tables/steels.toml"};
  const auto& headed = rules.headed;
  const Sourced<Stress>&futa = steel->second.futa, &fya = steel->second.fya;
  const Stress f_uta =
      headed.en ? futa.value
                : std::min({futa.value, Stress{headed.futa_of_yield.value * fya.value}, headed.futa_cap.value});
  const Length d = *insert.loop->diameter;
  const Force R = 0.25 * M_PI * d * d * f_uta;
  if (!is_usable(d) || !is_usable(futa.value) || !is_usable(fya.value) || !is_usable(R))
    return NotAssessed{fmt::format("the steel of loop {} is not described by numbers above zero", insert.id), {}};
  if (headed.en) trace.add([&] {
    return Step{.words = fmt::format("steel of one leg of loop {}", insert.id),
                .result = {"R", in(kN, R), "kN"},
                .formula = "pi / 4 * d^2 * f_uk / 1000",
                .given = {{"pi", M_PI, "1"}, {"d", in(mm, d), "mm"}, {"f_uk", in(MPa, futa.value), "MPa"}},
                .clause = "EN 1992-4 7.2.1.3",
                .sources = {futa.source}};
  });
  else trace.add([&] {
    return Step{.words = fmt::format("steel of one leg of loop {}", insert.id),
                .result = {"R", in(kN, R), "kN"},
                .formula = "pi / 4 * d^2 * min(futa, k_y * fya, cap) / 1000",
                .given = {{"pi", M_PI, "1"}, {"d", in(mm, d), "mm"}, {"futa", in(MPa, futa.value), "MPa"},
                          {"k_y", headed.futa_of_yield.value.value(), "1"}, {"fya", in(MPa, fya.value), "MPa"},
                          {"cap", in(MPa, headed.futa_cap.value), "MPa"}},
                .clause = "ACI 318-19 17.6.1.2",
                .sources = {futa.source, fya.source, headed.futa_of_yield.source, headed.futa_cap.source}};
  });
  return Resistance<Force>{R};
}

}  // namespace

Outcome<Resistance<Force>> loop_leg_steel(const plan::Insert& insert, LoopGrip grip, const tables::RuleSet& rules,
                                          const tables::Tables& tables, Trace& trace) {
  if (insert.kind == "loop-strand") {
    if (!tables.loops) return NotAssessed{"the table of loops is not there", "tables/loops.toml"};
    return steel_of_strand(insert, grip, *tables.loops, trace);
  }
  if (insert.kind == "loop-bar") return steel_of_bar(insert, rules, tables, trace);
  return NotAssessed{
      fmt::format("what a wire rope loses where it is bent was found in no source that could be read: loop {}", insert.id),
      "rating = { ... }, from the supplier's declaration"};
}

}  // namespace firstpick::resistances
