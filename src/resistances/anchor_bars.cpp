// Bars along a headed insert hold the body of concrete that would break out with it: they count in its place, never beside it.
//
//   N_ar  = n A_b f_s
//   f_s   = f_y min(1, l_in / l_d, l_out / l_d)        l_in, l_out: straight ends; a hook is developed or it is not
//   l_in  = h_ef - x / 1.5 - top                       x: the farthest bar; the body rises at 1 in 1.5 from the head
//   l_out = bottom - h_ef                              as if the bar stood on the axis, where the body is deepest
//   l_d, l_dh: development.cpp (ACI 318-19 25.4.2, 25.4.3), at the strength of this lift
//
//   N_Rk  = n min(A_b f_yk, l_in pi d f_bk, l_out pi d f_bk)        EN 1992-4 7.2.1.9, f_bk of EN 1992-1-1 8.4.2 in poor bond
//
// Source   ACI 318-19 17.5.2.1(a) and its commentary (distance); EN 1992-4:2018 7.2.1.9, 7.2.2.4: from memory.
// Choice   what the bars hold stands behind the same factor as the concrete: 4 of us, gamma_Mc of eu, although the standards
//          ask less of steel. A straight end that is not developed counts by its share (25.4.10.1), a hook does not count.
// Range    bars alike, along the axis, about the insert on both sides: a plan that states bars states that.

#include "resistances/anchor_bars.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "resistances/development.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"
#include "units/print.hpp"

namespace firstpick::resistances {

namespace {

// The keys of [insert.bars], all there and usable.
struct WholeBars {
  double count;
  Length diameter, distance, top, bottom;
  Stress f_y;  // credited
  bool hook_inside, hook_beyond;
  Area area() const { return (count * std::acos(-1.0) / 4.0) * diameter * diameter; }
};

struct Lengths {
  Length inside, beyond;
};

NotAssessed keys_left_out(const HeadedInsert& insert, const plan::AnchorBars& bars) {
  std::vector<std::string_view> names;
  const auto need = [&](bool is_there, std::string_view name) { if (!is_there) names.push_back(name); };
  need(bars.count.has_value(), "count");
  need(bars.diameter.has_value(), "diameter");
  need(bars.yield_strength.has_value(), "yield_strength");
  need(bars.ribbed.has_value(), "ribbed");
  need(bars.distance.has_value(), "distance");
  need(bars.top.has_value(), "top");
  need(bars.bottom.has_value(), "bottom");
  need(bars.top_end.has_value(), "top_end");
  need(bars.bottom_end.has_value(), "bottom_end");
  return {fmt::format("the bars about insert {} have no {}", insert.id, fmt::join(names, ", no ")),
          "write them in [insert.bars], or take the bars out"};
}

bool is_whole(const plan::AnchorBars& bars) {
  return bars.count && bars.diameter && bars.yield_strength && bars.ribbed && bars.distance && bars.top && bars.bottom &&
         bars.top_end && bars.bottom_end;
}

Outcome<WholeBars> whole(const HeadedInsert& insert, const tables::AnchorBarModel& model) {
  const plan::AnchorBars& bars = *insert.bars;
  if (!is_whole(bars)) return keys_left_out(insert, bars);
  if (!*bars.ribbed)
    return NotAssessed{fmt::format("the bars about insert {} are not ribbed: no rule develops them", insert.id),
                       "ribbed bars, or take the bars out"};
  if (*bars.count < 2)
    return NotAssessed{fmt::format("one bar about insert {} does not stand on both sides of it", insert.id),
                       "two bars or more, about the insert"};
  WholeBars all{static_cast<double>(*bars.count), *bars.diameter, *bars.distance, *bars.top, *bars.bottom,
                std::min(*bars.yield_strength, model.yield_most.value), *bars.top_end == plan::BarEnd::hook,
                *bars.bottom_end == plan::BarEnd::hook};
  if (!is_usable(all.diameter) || !is_usable(all.distance) || !is_usable(all.top) || !is_usable(all.bottom) ||
      !is_usable(all.f_y) || !is_usable(insert.h_ef) || !is_usable(insert.lambda_a))
    return NotAssessed{fmt::format("the bars about insert {} are not described by numbers above zero", insert.id), {}};
  constexpr double last_bits = 1.0 + 1e-9;
  const Length farthest = model.distance.value * insert.h_ef;
  if (!(all.distance <= last_bits * farthest))
    return NotAssessed{fmt::format("a bar stands {} from insert {}; within {:g} h_ef, {}, it would count",
                                   print(all.distance, UnitSystem::si, Rounding::up), insert.id, model.distance.value.value(),
                                   print(farthest, UnitSystem::si, Rounding::down)),
                       "bars nearer to the insert, or a deeper insert"};
  if (!(all.bottom < insert.site->thickness))
    return NotAssessed{fmt::format("the bars about insert {} end outside the concrete", insert.id),
                       "shorter bars; the concrete behind the insert is as thick as the solid has it"};
  return all;
}

Term term_of(const tables::AnchorBarModel& model, std::string symbol, auto quantity) {
  return model.en ? mm_n(std::move(symbol), quantity) : lb_in(std::move(symbol), quantity);
}

Outcome<Lengths> lengths(const HeadedInsert& insert, const WholeBars& bars, const tables::RuleSet& rules, Trace& trace) {
  const Sourced<Ratio>& slope = rules.headed.cone_extent;
  const Lengths l{insert.h_ef - bars.distance / slope.value - bars.top, bars.bottom - insert.h_ef};
  if (!is_usable(l.inside) || !is_usable(l.beyond))
    return NotAssessed{fmt::format("the bars about insert {} do not cross the surface along which the concrete breaks",
                                   insert.id),
                       "bars from near the face to well below the head"};
  const tables::AnchorBarModel& model = *rules.anchor_bars;
  trace.add([&] {
    return Step{.words = fmt::format("bars about insert {}: length in the body of concrete, of the farthest bar", insert.id),
                .result = term_of(model, "l_in", l.inside),
                .formula = "h_ef - x_b / k_h - t_b",
                .given = {term_of(model, "h_ef", insert.h_ef), term_of(model, "x_b", bars.distance),
                          term_of(model, "k_h", slope.value), term_of(model, "t_b", bars.top)},
                .clause = "geometry",
                .sources = {slope.source}};
  });
  trace.add([&] {
    return Step{.words = "length beyond it, as if they stood on the axis of the insert",
                .result = term_of(model, "l_out", l.beyond),
                .formula = "b_b - h_ef",
                .given = {term_of(model, "b_b", bars.bottom), term_of(model, "h_ef", insert.h_ef)},
                .clause = "geometry"};
  });
  return l;
}

// The share of the yield strength that one end develops.
struct End {
  std::string name;
  Length length;
  bool hook;
};

Outcome<Resistance<Force>> by_aci(const HeadedInsert& insert, const WholeBars& bars, const Lengths& l, Stress f_c,
                                  const tables::AnchorBarModel& model, Trace& trace) {
  const bool upright = insert.site->normal.z * insert.site->normal.z >=
                       insert.site->normal.x * insert.site->normal.x + insert.site->normal.y * insert.site->normal.y;
  const DevelopedBar bar{bars.diameter, bars.f_y, f_c, insert.lambda_a, upright};
  const std::array ends{End{"l_in", l.inside, bars.hook_inside}, End{"l_out", l.beyond, bars.hook_beyond}};
  std::optional<Length> l_d, l_dh;
  if (!bars.hook_inside || !bars.hook_beyond) l_d = straight_length(bar, *model.aci, trace);
  if (bars.hook_inside || bars.hook_beyond) l_dh = hooked_length(bar, *model.aci, trace);
  double share = 1.0;
  std::string formula = "f_yb";
  std::vector<Term> given{lb_in("f_yb", bars.f_y)};
  for (const End& end : ends) {
    const Length least = end.hook ? *l_dh : model.aci->straight_least.value;
    if (!(end.length >= least))
      return NotAssessed{fmt::format("the bars about insert {} have {} {} the body of concrete, and {} is the least {}",
                                     insert.id, print(end.length, UnitSystem::si, Rounding::down),
                                     end.name == "l_in" ? "in" : "beyond", print(least, UnitSystem::si, Rounding::up),
                                     end.hook ? "for their hook at this strength" : "for a straight end"),
                         end.hook ? "a deeper insert, thinner bars, or more strength before lifting"
                                  : "hooks, a deeper insert or longer bars"};
    if (end.hook) continue;
    share = std::min(share, double{end.length / *l_d});
    formula += fmt::format("{}{} / l_d", given.size() == 1 ? " * min(1, " : ", ", end.name);
    given.push_back(lb_in(end.name, end.length));
  }
  if (l_d) {
    formula += ")";
    given.push_back(lb_in("l_d", *l_d));
  }
  const Stress f_s = share * bars.f_y;
  const Force N_ar = bars.area() * f_s;
  if (!is_usable(N_ar)) return NotAssessed{fmt::format("the bars about insert {} hold no usable number", insert.id), {}};
  trace.add([&] {
    return Step{.words = "stress that the bars develop on both sides",
                .result = lb_in("f_s", f_s),
                .formula = formula,
                .given = given,
                .clause = "ACI 318-19 17.5.2.1, 25.4.10.1",
                .sources = {model.yield_most.source}};
  });
  trace.add([&] {
    return Step{.words = fmt::format("bars that hold the body of concrete about insert {}, in its place", insert.id),
                .result = lb_in("N_ar", N_ar),
                .formula = "n_b * pi / 4 * d_b^2 * f_s",
                .given = {lb_in("n_b", Ratio{bars.count}), lb_in("d_b", bars.diameter), lb_in("f_s", f_s)},
                .clause = "ACI 318-19 17.5.2.1(a)",
                .sources = {model.distance.source}};
  });
  return Resistance<Force>{N_ar};
}

Outcome<Resistance<Force>> by_en(const HeadedInsert& insert, const WholeBars& bars, const Lengths& l, Stress f_ck,
                                 const tables::AnchorBarModel& model, Trace& trace) {
  const tables::EnAnchorage& en = *model.en;
  if (!(bars.diameter <= en.thickest.value))
    return NotAssessed{fmt::format("bars of {} about insert {} are thicker than {}",
                                   print(bars.diameter, UnitSystem::si, Rounding::up), insert.id,
                                   print(en.thickest.value, UnitSystem::si)),
                       "more and thinner bars"};
  const Ratio least = bars.hook_inside ? en.hook_diameters.value : en.straight_diameters.value;
  if (!(l.inside >= least * bars.diameter))
    return NotAssessed{fmt::format("the bars about insert {} have {} in the body of concrete, less than {:g} diameters",
                                   insert.id, print(l.inside, UnitSystem::si, Rounding::down), least.value()),
                       "a deeper insert, thinner bars, or bars nearer to it"};
  const Length least_beyond = std::max(en.beyond_least.value, Length{en.straight_diameters.value * bars.diameter});
  if (!(l.beyond >= least_beyond))
    return NotAssessed{fmt::format("the bars about insert {} have {} beyond the body of concrete, less than {}", insert.id,
                                   print(l.beyond, UnitSystem::si, Rounding::down),
                                   print(least_beyond, UnitSystem::si, Rounding::up)),
                       "longer bars"};
  const double f_ck_MPa = in(MPa, f_ck);
  const Stress f_bk = en.bond.value * std::pow(f_ck_MPa, 2.0 / 3.0) * MPa;
  const Area around = (bars.count * std::acos(-1.0)) * bars.diameter * std::min(l.inside, l.beyond);
  const Force steel = bars.area() * bars.f_y, bond = around * f_bk;
  const Force N = std::min(steel, bond);
  if (!is_usable(N) || !is_usable(bond) || !is_usable(steel))
    return NotAssessed{fmt::format("the bars about insert {} hold no usable number", insert.id), {}};
  trace.add([&] {
    return Step{.words = "bond of the bars, as in poor conditions",
                .result = mm_n("f_bk", f_bk),
                .formula = "k_b * f_ck^(2/3)",
                .given = {mm_n("k_b", en.bond.value), mm_n("f_ck", f_ck)},
                .clause = "EN 1992-1-1 8.4.2",
                .sources = {en.bond.source}};
  });
  trace.add([&] {
    return Step{.words = fmt::format("bars that hold the body of concrete about insert {}, in its place", insert.id),
                .result = mm_n("N_Rk_re", N),
                .formula = "n_b * min(pi / 4 * d_b^2 * f_yb, pi * d_b * f_bk * min(l_in, l_out))",
                .given = {mm_n("n_b", Ratio{bars.count}), mm_n("d_b", bars.diameter), mm_n("f_yb", bars.f_y),
                          mm_n("f_bk", f_bk), mm_n("l_in", l.inside), mm_n("l_out", l.beyond)},
                .clause = "EN 1992-4 7.2.1.9",
                .sources = {model.distance.source, model.yield_most.source, en.thickest.source, en.straight_diameters.source,
                            en.hook_diameters.source, en.beyond_least.source}};
  });
  return Resistance<Force>{N};
}

}  // namespace

Outcome<Resistance<Force>> anchor_bars(const HeadedInsert& insert, Stress f_c, const tables::RuleSet& rules, Trace& trace) {
  if (!insert.bars) return NotAssessed{fmt::format("insert {} has no bars about it", insert.id), {}};
  if (!rules.anchor_bars)
    return NotAssessed{fmt::format("the rule set {} has no values for bars about an insert", rules.id),
                       "take [insert.bars] out, or name a rule set that counts them"};
  if (!is_usable(f_c)) return NotAssessed{"the concrete strength is not a number above zero", {}};
  const auto bars = whole(insert, *rules.anchor_bars);
  if (const auto* why = std::get_if<NotAssessed>(&bars)) return *why;
  const auto l = lengths(insert, std::get<WholeBars>(bars), rules, trace);
  if (const auto* why = std::get_if<NotAssessed>(&l)) return *why;
  return rules.anchor_bars->en
             ? by_en(insert, std::get<WholeBars>(bars), std::get<Lengths>(l), f_c, *rules.anchor_bars, trace)
             : by_aci(insert, std::get<WholeBars>(bars), std::get<Lengths>(l), f_c, *rules.anchor_bars, trace);
}

Outcome<Resistance<Force>> pryout_beside_bars(Group group, const Outcome<Resistance<Force>>& pryout,
                                              const tables::RuleSet& rules, Trace& trace) {
  const bool some = std::ranges::any_of(group, [](const HeadedInsert* insert) { return insert->bars.has_value(); });
  const auto* known = std::get_if<Resistance<Force>>(&pryout);
  if (!some || !known || !rules.anchor_bars || !rules.anchor_bars->en) return pryout;
  const Sourced<Ratio>& share = rules.anchor_bars->en->pryout;
  const Force V = share.value * known->value;
  trace.add([&] {
    return Step{.words = "pry-out beside bars that hold the tension",
                .result = mm_n("V_Rk_cp_re", V),
                .formula = "k_re * V_Rk_cp",
                .given = {mm_n("k_re", share.value), mm_n("V_Rk_cp", known->value)},
                .clause = "EN 1992-4 7.2.2.4",
                .sources = {share.source}};
  });
  return Resistance<Force>{V};
}

}  // namespace firstpick::resistances
