// The piece itself does not crack in bending while it hangs.
//
//   tension in bending <= f_r / factor        at every place, over all situations of the stage
//
// Source   f_r: resistances/cracking_stress.cpp; factor: "cracking.factor" of the rule set. Loads: what the legs carry, with
//          dynamic factor and grip of the form, raised to the handbook's multiplier (bending_multiplier.cpp). Steel bars are
//          not counted.
// Models   line (line_tension.cpp), panel (panel_tension.cpp; turned: turned_panel_tension.cpp), ring, box
//          (ring_tension.cpp, box_tension.cpp). Any other block is not computed: a note where it is small and stocky
//          (piece_model.cpp) or the plan names the engineer's own check, else HOLD.
// Missing  statics, strength or loads not assessed; a piece the model does not describe; `may_crack` with inserts that are
//          said to sit in uncracked concrete: HOLD. A ring or box that its model refuses passes as a block may.

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/cracked_bending.hpp"
#include "checks/line_method.hpp"
#include "checks/piece_bending.hpp"
#include "checks/prestressed_bending.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view cracking_rule = "piece-cracking";

const char* theory_of(const ModelChoice& model) {
  if (model.model == plan::PieceModel::line) return "statics of beams";
  if (model.model == plan::PieceModel::panel) return "theory of thin plates";
  return model.known == Known::ring ? "statics of thin rings" : "statics of frames";
}

std::vector<Source> sources_of(const ModelChoice& model, const tables::CrackingModel& numbers) {
  if (model.model == plan::PieceModel::panel)
    return {numbers.poisson.source, numbers.patch.source, numbers.pick_strip.source};
  if (model.known == Known::ring) return {numbers.poisson.source, numbers.line_slenderness.source};
  if (model.known == Known::box) return {numbers.pick_strip.source, numbers.line_slenderness.source};
  return {};
}

Outcome<BendingTension> tension_of(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  if (auto gap = bending_gap(facts)) return *std::move(gap);
  const bool turned = is_turned(facts);
  if (turned && model.model != plan::PieceModel::panel)
    return NotAssessed{"bending of a piece that is turned is evaluated of flat panels only",
                       std::string(own_bending_check)};
  const auto raise = bending_raise(facts, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&raise)) return *gap;
  auto tension = bending_tension(facts, model);
  if (auto* found = std::get_if<BendingTension>(&tension)) {
    const Stress computed = found->tension;
    found->tension = std::get<Ratio>(raise) * computed;
    const std::string symbol = turned ? "r_turn" : "r_bend";  // the rule set raises each stage on its own
    trace.add([&] {
      return Step{.words = fmt::format("largest tension in bending, {}; {}", found->where, found->situation),
                  .result = {"sigma", in(MPa, found->tension), "MPa"},
                  .formula = symbol + " * sigma_0",
                  .given = {{symbol, std::get<Ratio>(raise).value(), "1"}, {"sigma_0", in(MPa, computed), "MPa"}},
                  .clause = theory_of(model),
                  .sources = sources_of(model, facts.rules.cracking)};
    });
  }
  return tension;
}

constexpr std::string_view state_a_check =
    "[piece] model = \"line\" or \"panel\" where it is one, or bending_check: name the engineer's own check";

Finding checked_by_engineer(const plan::Piece& piece) {
  return noted(cracking_rule, piece.mark, fmt::format("its bending is checked elsewhere, as the plan states: {}", piece.bending_check));
}

// The drawing says that strands are released, and no strand is in the plan: what they do to the piece is not known.
Finding strands_not_told(const plan::Piece& piece) {
  if (is_stated(piece.bending_check)) return checked_by_engineer(piece);
  return missing(cracking_rule, piece.mark, "the plan gives a release strength, but no strand that is released",
                 "[[piece.strand]] with force, line and transfer_length; where the piece has no strands it has no release_strength");
}

// `why`: what stands against the model that its shape would have.
Finding not_computed(const StageFacts& facts, const std::string& why) {
  const plan::Piece& piece = facts.plan.piece;
  if (is_stated(piece.bending_check)) return checked_by_engineer(piece);
  const Stockiness stocky = stockiness(facts.body, facts.rules.cracking);
  const std::string told_of = told(stocky, facts.rules.cracking, piece.units);
  if (stocky.is_stocky)
    return noted(cracking_rule, piece.mark,
                 fmt::format("passes as a small, stocky block, its bending is not computed{}: {}", why, told_of));
  return missing(cracking_rule, piece.mark,
                 fmt::format("its bending is not computed{}, and it is no small, stocky block: {}", why, told_of),
                 std::string(state_a_check));
}

// A word in the plan is no way round a model that fits: a slab called a beam bends across, too.
Finding called_what_it_is_not(const plan::Piece& piece) {
  if (is_stated(piece.bending_check)) return checked_by_engineer(piece);
  return missing(cracking_rule, piece.mark,
                 fmt::format("the plan calls it a {}, and by its shape it is none",
                             piece.model == plan::PieceModel::line ? "line" : "block"),
                 "[piece] model: leave it out, or bending_check: name the engineer's own check");
}

// What the line would be bent to without the thrust of its legs, under the same raise.
std::string with_upright_legs(const StageFacts& facts, const ModelChoice& model, const BendingTension& bent,
                              Stress allowed) {
  if (model.model != plan::PieceModel::line || !facts.in_words) return {};  // a line that is turned has no tension
  const auto as_is = line_tension(facts, model), upright = line_tension_upright(facts, model);
  const auto* inclined = std::get_if<BendingTension>(&as_is);
  const auto* found = std::get_if<BendingTension>(&upright);
  constexpr double worth_telling = 0.99;
  if (!inclined || !found || !(found->tension < worth_telling * inclined->tension)) return {};
  const Stress tension = bent.tension * (found->tension / inclined->tension);
  return fmt::format("; with its legs upright, under a beam, it would be {}, {}",
                     print(tension, facts.plan.piece.units, Rounding::up),
                     tension <= allowed ? "which is allowed" : "still too much");
}

}  // namespace

namespace {

std::vector<Finding> findings_by(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  if (piece.strands.empty() && facts.plan.concrete.release_strength) return {strands_not_told(piece)};
  if (piece.may_crack) return cracked_findings(facts, model, trace);
  if (!piece.strands.empty()) return prestressed_findings(facts, model, trace);
  if (!model.fits) return {called_what_it_is_not(piece)};
  if (model.model == plan::PieceModel::block && model.known == Known::no) return {not_computed(facts, "")};

  const auto& factor = facts.rules.cracking.factor;
  const auto found = tension_of(facts, model, trace);
  const bool loads_known = !bending_gap(facts);
  if (const auto* gap = std::get_if<NotAssessed>(&found); gap && model.known != Known::no && loads_known)
    return {not_computed(facts, " (" + gap->why + ")")};
  Outcome<Demand<Stress>> tension = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&found)) tension = *gap;
  else tension = Demand<Stress>{std::get<BendingTension>(found).tension};
  const auto rupture = cracking_stress_of(facts, trace);
  Finding finding = compared<Stress>(cracking_rule, piece.mark, tension, rupture, factor.value.value(),
                                     std::string(cracking_clause(facts)));
  // A stated check stands in for what the models cannot judge; it mends neither a failure nor missing strength.
  if (std::holds_alternative<NotAssessed>(found) && is_assessed(facts.load) && is_assessed(facts.gear_situations) &&
      is_stated(piece.bending_check))
    return {checked_by_engineer(piece)};
  if (trace.is_recording()) tell_line_method(facts, model, trace);
  if (finding.result == Result::missing && finding.remedy.empty()) finding.remedy = state_a_check;
  if (const auto* bent = std::get_if<BendingTension>(&found)) {
    finding.situation = bent->situation;
    if (finding.result == Result::fail) {
      finding.text = fmt::format("{} of tension at the {}, {} is allowed before it cracks",
                                 firstpick::print(bent->tension, piece.units, Rounding::up), bent->where,
                                 firstpick::print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
      finding.remedy = model.known == Known::ring
                           ? "a beam or frame whose legs hang upright, more legs evenly round, or more strength"
                       : model.known == Known::box
                           ? "picks nearer the walls, a beam whose legs hang upright, or more strength"
                       : bent->some_legs_only
                           ? "gear that shares the load between all legs, a strongback, picks that halve the spans, or "
                             "more strength"
                           : "a strongback, picks that halve the spans, steeper legs, or more strength";
      finding.remedy += with_upright_legs(facts, model, *bent, std::get<Stress>(*finding.capacity));
    }
  }
  return {finding};
}

// What its shape makes of the piece, whatever the plan calls it: a word is no way round a failure.
std::optional<std::vector<Finding>> failure_by_shape(const StageFacts& facts, const ModelChoice& stated) {
  plan::Plan unnamed = facts.plan;
  unnamed.piece.model.reset();
  const ModelChoice derived = piece_model(unnamed, facts.body, facts.rules.cracking);
  if (derived.model == stated.model) return {};
  StageFacts again = facts;
  again.bending = std::make_shared<BendingMemo>();
  Trace silent;
  auto found = findings_by(again, derived, silent);
  if (std::ranges::any_of(found, [](const Finding& f) { return f.result == Result::fail; })) return found;
  return {};
}

}  // namespace

std::vector<Finding> piece_cracking(const StageFacts& facts, Trace& trace) {
  const ModelChoice model = piece_model(facts.plan, facts.body, facts.rules.cracking);
  if (model.stated && is_stated(facts.plan.piece.bending_check))
    if (auto failed = failure_by_shape(facts, model)) return *std::move(failed);
  return findings_by(facts, model, trace);
}

}  // namespace firstpick::checks
