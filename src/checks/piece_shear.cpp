// A long piece does not break in shear while it hangs.
//
//   V Q / (I b) <= v_n / SF_v           at every section, over all situations of the stage
//
// Source   v_n: resistances/plain_shear.cpp; SF_v: "cracking.shear_factor" of the rule set, a choice. Loads as of
//          piece-cracking: what legs carry, raised to the handbook's multiplier.
// Section  cut from the real solid; its shear is that of the line (demands/beam_line.hpp), at the picks in full: an insert pulls,
//          no support presses there.
// Bars     no stirrup and no strand is counted. Of a piece that may crack only the depth to its bars counts:
//          V h / d, d to the row of bars that is nearest to the middle.
// Passes   what is no line: shear of panels, blocks and boxes is not judged; that of a ring is in piece-cracking.
// Missing  as of piece-cracking, with its `bending_check`.

#include <algorithm>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/piece_bending.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"
#include "resistances/plain_shear.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view shear_rule = "piece-shear";

// Depth of the piece over that to its bars. Not assessed: no bars, or bars without a place in the piece.
Outcome<Ratio> depth_over_bars(const StageFacts& facts) {
  const plan::Piece& piece = facts.plan.piece;
  const Length depth = facts.body.highest.z - facts.body.lowest.z;
  std::optional<Length> least;
  for (const plan::Bar& bar : piece.bars)
    for (const Position& at : bar.line) {
      if (!is_finite(at.z)) return NotAssessed{"the place of a bar is not a usable number", "[[piece.bar]] line"};
      const Length to_bar = std::max(at.z - facts.body.lowest.z, facts.body.highest.z - at.z);
      least = std::min(least.value_or(to_bar), to_bar);
    }
  if (!least || !(*least > Length{}) || !(*least <= depth))
    return NotAssessed{"the piece may crack, and no bars are in it that could carry it then", "[[piece.bar]]"};
  return Ratio{depth / *least};
}

Outcome<LineShear> shear_of(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  if (auto gap = bending_gap(facts)) return *std::move(gap);
  if (!model.fits) return NotAssessed{"the plan calls it a line, and by its shape it is none", std::string(own_bending_check)};
  if (is_turned(facts)) return NotAssessed{"shear of a piece that is turned is not computed", std::string(own_bending_check)};
  const auto raise = bending_raise(facts, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&raise)) return *gap;
  auto& known = facts.bending->shear;
  if (!known) known = line_shear(facts, model);
  if (const auto* gap = std::get_if<NotAssessed>(&*known)) return *gap;
  LineShear found = std::get<LineShear>(*known);
  const Ratio r = std::get<Ratio>(raise);
  Ratio cracked{1.0};
  if (facts.plan.piece.may_crack) {
    const auto over = depth_over_bars(facts);
    if (const auto* gap = std::get_if<NotAssessed>(&over)) return *gap;
    cracked = std::get<Ratio>(over);
  }
  const Stress computed = found.stress;
  found.stress = r * cracked * computed;
  trace.add([&] {
    return Step{.words = fmt::format("largest shear stress, at {}; {}", found.where, found.situation),
                .result = {"v_line_0", in(MPa, computed), "MPa"},
                .formula = "V / A_v / 1000",
                .given = {{"V", in(kN, found.shear), "kN"}, {"A_v", in(m2, found.shear_area), "m2"}},
                .clause = "statics of beams"};
  });
  trace.add([&] {
    Step step{.words = "the same with the raise of the loads",
              .result = {"v_line", in(MPa, found.stress), "MPa"},
              .formula = "r_bend * v_line_0",
              .given = {{"r_bend", r.value(), "1"}, {"v_line_0", in(MPa, computed), "MPa"}},
              .clause = "statics of beams"};
    if (facts.plan.piece.may_crack) {
      step.words += ", and of the depth to the bars alone";
      step.formula = "r_bend * r_d * v_line_0";
      step.given.push_back({"r_d", cracked.value(), "1"});
    }
    return step;
  });
  return found;
}

}  // namespace

std::vector<Finding> piece_shear(const StageFacts& facts, Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  const ModelChoice model = piece_model(facts.plan, facts.body, facts.rules.cracking);
  if (model.model != plan::PieceModel::line) return {passed(shear_rule, piece.mark)};
  const auto found = shear_of(facts, model, trace);
  Outcome<Demand<Stress>> demand = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&found)) {
    if (!bending_gap(facts) && is_stated(piece.bending_check))
      return {noted(shear_rule, piece.mark,
                    fmt::format("its shear is checked elsewhere, as the plan states: {}", piece.bending_check))};
    demand = *gap;
  } else {
    demand = Demand<Stress>{std::get<LineShear>(found).stress};
  }
  Outcome<Resistance<Stress>> nominal = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) nominal = *gap;
  else
    nominal = resistances::plain_shear(facts.plan.concrete, std::get<Stress>(facts.formula_strength), facts.rules,
                                       facts.tables, trace);
  const auto& factor = facts.rules.cracking.shear_factor;
  trace.add([&] {
    return Step{.words = "factor between what plain concrete holds in shear and what is allowed",
                .result = {"SF_v", factor.value.value(), "1"},
                .sources = {factor.source}};
  });
  Finding finding =
      compared<Stress>(shear_rule, piece.mark, demand, nominal, factor.value.value(),
                       facts.rules.cracking.en ? "EN 1992-1-1 12.6.3" : "ACI 318-19 14.5.5.1");
  if (const auto* sheared = std::get_if<LineShear>(&found)) {
    finding.situation = sheared->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("{} of shear stress at {}, {} is allowed of concrete without stirrups",
                                 firstpick::print(sheared->stress, piece.units, Rounding::up), sheared->where,
                                 firstpick::print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
      finding.remedy = sheared->some_legs_only
                           ? "gear that shares the load between all legs, more picks along the piece, or more strength"
                           : "more picks along the piece, so that each carries less, or more strength";
    }
  }
  return {finding};
}

}  // namespace firstpick::checks
