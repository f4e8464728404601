// What piece-cracking says of a piece with strands.
//
//   tension      <= f_r / SF_r          as of any piece (piece_cracking.cpp)
//   compression  <= k_press f           f the strength at the lift, lowered as for inserts below their floor
//
// Source   k_press: "prestress.compression" of the rule set. Stresses: prestressed_bending.cpp.
// Missing  a piece that is no line, or is turned; what its strands hold; no release strength. A named
//          `bending_check` stands in for the first two, never for the release strength.

#include <algorithm>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/prestressed_bending.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view strand_cracking_rule = "piece-cracking";

Outcome<PrestressedBending> strand_bending_of(const StageFacts& facts, const ModelChoice& model,
                                              Trace& trace) {
  if (auto gap = bending_gap(facts)) return *std::move(gap);
  if (model.model != plan::PieceModel::line || !model.fits)
    return NotAssessed{"strands are counted in a piece that is computed as a line, and this is none",
                       std::string(own_bending_check)};
  if (is_turned(facts))
    return NotAssessed{"bending of a piece with strands that is turned is not computed",
                       std::string(own_bending_check)};
  const auto raise = bending_raise(facts, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&raise)) return *gap;
  return prestressed_bending(facts, model, std::get<Ratio>(raise));
}

// What is no number stays, and passes nothing.
Stress at_least_none(Stress stress) { return stress <= Stress{} ? Stress{} : stress; }

Stress by_strands(const demands::FibreStress& stress) {
  Stress all{};
  for (const Stress& one : stress.of_rows) all += one;
  return all;
}

Finding strand_tension_finding(const StageFacts& facts, const Outcome<PrestressedBending>& found,
                               Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  Outcome<Demand<Stress>> tension = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&found))
    tension = *gap;
  else
    tension = Demand<Stress>{at_least_none(std::get<PrestressedBending>(found).tension.stress)};
  Finding finding =
      compared<Stress>(strand_cracking_rule, piece.mark, tension, cracking_stress_of(facts, trace),
                       facts.rules.cracking.factor.value.value(), std::string(cracking_clause(facts)));
  const auto* bent = std::get_if<PrestressedBending>(&found);
  if (!bent) return finding;
  finding.situation = bent->tension_situation;
  if (finding.result != Result::fail) return finding;
  const Stress strands = by_strands(bent->tension);
  const auto shown = [&](Stress stress, Rounding rounding) { return print(stress, piece.units, rounding); };
  const bool they_pull = strands > Stress{};
  finding.text =
      fmt::format("{} of tension at the {}, {} is allowed before it cracks; the strands {} {} there",
                  shown(bent->tension.stress, Rounding::up), bent->tension_where,
                  shown(std::get<Stress>(*finding.capacity), Rounding::down), they_pull ? "bring" : "take",
                  shown(abs(strands), they_pull ? Rounding::up : Rounding::down));
  finding.remedy =
      they_pull
          ? "picks nearer the ends, strands or bars at the pulled face, strands unbonded at the ends, or "
            "more strength"
          : "a strongback, picks that halve the spans, steeper legs, or more strength";
  return finding;
}

Finding strand_compression_finding(const StageFacts& facts, const PrestressedBending& bent) {
  const plan::Piece& piece = facts.plan.piece;
  const auto& share = facts.rules.prestress.compression;
  Outcome<Resistance<Stress>> strength = NotAssessed{};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength))
    strength = *gap;
  else
    strength = Resistance<Stress>{std::get<Stress>(facts.formula_strength)};
  Finding finding = compared<Stress>(
      strand_cracking_rule, piece.mark, Demand<Stress>{at_least_none(-bent.compression.stress)},
      strength, 1.0 / share.value.value(), share.source.title + ", " + share.source.locator);
  finding.situation = bent.compression_situation;
  if (finding.result != Result::fail) return finding;
  finding.text =
      fmt::format("{} of compression at the {}, {} is allowed at this strength",
                  print(Stress{-bent.compression.stress}, piece.units, Rounding::up), bent.compression_where,
                  print(std::get<Stress>(*finding.capacity), piece.units, Rounding::down));
  finding.remedy =
      "more strength before the strands are released and the piece is lifted, or fewer strands bonded there";
  return finding;
}

}  // namespace

std::vector<Finding> prestressed_findings(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  const plan::Piece& piece = facts.plan.piece;
  if (!facts.plan.concrete.release_strength)
    return {missing(strand_cracking_rule, piece.mark,
                    "the strength that the strands ask for before they are released is not in the plan",
                    "[concrete] release_strength: as the drawing has it")};
  // A check that is named stands in for what the model does not cover, not for what the plan leaves out or gets wrong.
  if (auto gap = unusable_strands(facts)) return {missing(strand_cracking_rule, piece.mark, gap->why, gap->remedy)};
  const auto found = strand_bending_of(facts, model, trace);
  if (std::holds_alternative<NotAssessed>(found) && !bending_gap(facts) && is_stated(piece.bending_check))
    return {
        noted(strand_cracking_rule, piece.mark,
              fmt::format("its bending is checked elsewhere, as the plan states: {}", piece.bending_check))};
  std::vector<Finding> findings{strand_tension_finding(facts, found, trace)};
  if (const auto* bent = std::get_if<PrestressedBending>(&found)) {
    tell_steps(*bent, facts, trace);
    trace.add([&] {
      return Step{.words = "share of the strength up to which strands may press the concrete",
                  .result = {"k_press", facts.rules.prestress.compression.value.value(), "1"},
                  .sources = {facts.rules.prestress.compression.source}};
    });
    findings.push_back(strand_compression_finding(facts, *bent));
  } else if (findings.front().remedy.empty()) {
    findings.front().remedy = std::string(own_bending_check);
  }
  return findings;
}

}  // namespace firstpick::checks
