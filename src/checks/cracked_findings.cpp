// What piece-cracking says of a piece that the engineer lets crack.
//
//   bars         f_s <= k_y f_y
//   concrete     f_c <= k_c f           f the strength at the lift, lowered as for inserts below their floor
//   where no bars lie on the pulled side     tension <= f_r / SF_r, as of any piece
//   cracks       a note with their width: it decides nothing
//
// Source   k_y, k_c: "bars.*" of the rule set. Stresses and widths: cracked_bending.cpp.
// Missing  no engineer; inserts that are not said to sit in cracked concrete; no bars or one not described;
//          strands; a piece that is no line, or is turned. A named `bending_check` stands in where the
//          program computes nothing.

#include <algorithm>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/cracked_bending.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view bar_cracking_rule = "piece-cracking";

Outcome<CrackedBending> bar_bending_of(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  if (auto gap = bending_gap(facts)) return *std::move(gap);
  if (facts.plan.piece.bars.empty())
    return NotAssessed{
        "the piece may crack, and the bars that carry it are not in the plan",
        "[[piece.bar]]: their area, yield strength, line and spacing, or [piece] bending_check"};
  if (!facts.plan.piece.strands.empty())
    return NotAssessed{"a piece with strands that may crack is not computed", std::string(own_bending_check)};
  if (model.model != plan::PieceModel::line || !model.fits)
    return NotAssessed{"bars are counted in a piece that is computed as a line, and this is none",
                       std::string(own_bending_check)};
  if (is_turned(facts))
    return NotAssessed{"bars of a piece that is turned are not computed", std::string(own_bending_check)};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) return *gap;
  const auto raise = bending_raise(facts, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&raise)) return *gap;
  return cracked_bending(facts, model, std::get<Ratio>(raise), std::get<Stress>(facts.formula_strength),
                         trace);
}

Finding bar_finding(const StageFacts& facts, const CrackedBending& bent) {
  const plan::Piece& piece = facts.plan.piece;
  const auto& share = facts.rules.bars.yield_share;
  Finding finding = compared<Stress>(bar_cracking_rule, piece.mark, Demand<Stress>{bent.bar},
                                     Resistance<Stress>{bent.yield_strength}, 1.0 / share.value.value(),
                                     "elastic analysis of cracked sections");
  finding.situation = bent.bar_at.situation;
  if (finding.result != Result::fail) return finding;
  finding.text = fmt::format("{} in bars '{}' of the cracked piece, {}; {} is allowed",
                             print(bent.bar, piece.units, Rounding::up), bent.layer, bent.bar_at.where,
                             print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
  finding.remedy = "a strongback, picks that halve the spans, steeper legs, or more bars";
  return finding;
}

Finding pressed_concrete_finding(const StageFacts& facts, const CrackedBending& bent) {
  const plan::Piece& piece = facts.plan.piece;
  Finding finding = compared<Stress>(bar_cracking_rule, piece.mark, Demand<Stress>{bent.concrete},
                                     Resistance<Stress>{std::get<Stress>(facts.formula_strength)},
                                     1.0 / facts.rules.bars.compression.value.value(),
                                     "elastic analysis of cracked sections");
  finding.situation = bent.concrete_at.situation;
  if (finding.result != Result::fail) return finding;
  finding.text = fmt::format("{} of compression in the cracked piece, {}; {} is allowed at this strength",
                             print(bent.concrete, piece.units, Rounding::up), bent.concrete_at.where,
                             print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
  finding.remedy = "a strongback, picks that halve the spans, steeper legs, or more strength";
  return finding;
}

Finding bare_finding(const StageFacts& facts, const BendingTension& bare, Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  Finding finding = compared<Stress>(
      bar_cracking_rule, piece.mark, Demand<Stress>{bare.tension}, cracking_stress_of(facts, trace),
      facts.rules.cracking.factor.value.value(), std::string(cracking_clause(facts)));
  finding.situation = bare.situation;
  if (finding.result != Result::fail) return finding;
  finding.text = fmt::format("{} of tension at the {}, where no bars lie; {} is allowed before it cracks",
                             print(bare.tension, piece.units, Rounding::up), bare.where,
                             print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
  finding.remedy =
      "bars on that side, a strongback, picks that halve the spans, steeper legs, or more strength";
  return finding;
}

Finding crack_note(const StageFacts& facts, const CrackedBending& bent) {
  const plan::Piece& piece = facts.plan.piece;
  const Length from = facts.rules.bars.crack_width.value;
  const std::string stated = "the engineer states that the piece may crack while it hangs, and its bars carry it";
  if (bent.crack_at.where.empty()) return noted(bar_cracking_rule, piece.mark, stated);
  const std::string then =
      bent.crack > from ? fmt::format("more than {} mm: the engineer says whether it may be used then",
                                      print_number(in(mm, from), 2, Rounding::down))
                        : std::string("look for them when it is down");
  return noted(bar_cracking_rule, piece.mark,
               fmt::format("{}: cracks of up to {} mm, {}; {}", stated,
                           print_number(in(mm, bent.crack), 2, Rounding::up), bent.crack_at.where, then));
}

}  // namespace

std::vector<Finding> cracked_findings(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  if (!facts.plan.concrete.cracked.value_or(false))
    return {missing(bar_cracking_rule, piece.mark,
                    "the piece may crack, but its inserts are not said to sit in cracked concrete",
                    "[concrete] cracked = true, or may_crack = false")};
  if (!is_stated(piece.engineer))
    return {missing(bar_cracking_rule, piece.mark,
                    "the piece may crack, and no engineer is named who says so",
                    "[piece] engineer, or may_crack = false")};
  // A check that is named stands in for what the model does not cover, not for what the plan leaves out or gets wrong.
  if (auto gap = unusable_bars(facts)) return {missing(bar_cracking_rule, piece.mark, gap->why, gap->remedy)};
  const auto found = bar_bending_of(facts, model, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&found)) {
    if (!bending_gap(facts) && is_assessed(facts.formula_strength) && is_stated(piece.bending_check))
      return {noted(
          bar_cracking_rule, piece.mark,
          fmt::format("the engineer states that the piece may crack while it hangs; its bars are checked "
                      "elsewhere, as the plan states: {}",
                      piece.bending_check))};
    return {missing(bar_cracking_rule, piece.mark, gap->why,
                    gap->remedy.empty() ? std::string(own_bending_check) : gap->remedy)};
  }
  const auto& bent = std::get<CrackedBending>(found);
  trace.add([&] {
    return Step{.words = "share of their yield strength that bars of a cracked piece may be asked for",
                .result = {"k_y", facts.rules.bars.yield_share.value.value(), "1"},
                .sources = {facts.rules.bars.yield_share.source}};
  });
  trace.add([&] {
    return Step{.words = "share of the strength up to which the concrete of a cracked piece may be pressed",
                .result = {"k_fc", facts.rules.bars.compression.value.value(), "1"},
                .sources = {facts.rules.bars.compression.source}};
  });
  trace.add([&] {
    return Step{.words = "width of cracks from which the report warns",
                .result = {"w_max", in(mm, facts.rules.bars.crack_width.value), "mm"},
                .sources = {facts.rules.bars.crack_width.source}};
  });
  std::vector<Finding> findings;
  if (!bent.bar_at.where.empty()) {
    findings.push_back(bar_finding(facts, bent));
    findings.push_back(pressed_concrete_finding(facts, bent));
  }
  if (!bent.bare.where.empty()) findings.push_back(bare_finding(facts, bent.bare, trace));
  findings.push_back(crack_note(facts, bent));
  return findings;
}

}  // namespace firstpick::checks
