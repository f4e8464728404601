// No insert cracks the wall or slab that it pulls across.
//
//   tension in bending <= f_r / factor        of each insert, over all situations of the stage
//
// Wall     measured in the solid (piece/insert_wall.hpp). Flat: a strip to what holds the wall (demands/wall_strip.hpp), the
//          shorter where it is held both ways. Round: a ring
//          (demands/round_wall.hpp), no higher than the arc between two pulls over "cracking.round_height".
// Loads    as of piece-cracking: what legs carry, raised to the handbook's multiplier (bending_multiplier.cpp).
// Source   f_r and factor as of piece-cracking; widths "cracking.wall_*" of the rule set. Bars are not counted.
// Passes   panels, and rings and boxes that are computed: their own bending has the pulls in it (piece-cracking). An insert
//          whose concrete no other member holds: it bends with the whole piece.
// Missing  loads, statics or strength not assessed; a wall that cannot be measured; a pull along a wall off its middle by
//          more than a quarter of the thickness: HOLD, or a note where the plan names the engineer's own check.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/insert_wall.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

constexpr std::string_view wall_rule = "insert-wall-bending";

const char* remedy_of(const WallTension& found) {
  if (found.round) return "legs that hang upright under a beam or frame, more legs evenly round, or more strength";
  return found.in_face ? "picks nearer to what holds the wall or slab, more picks, or more strength"
                       : "legs that hang upright under a beam or frame, picks nearer to what holds the wall, or more strength";
}

Finding against_rupture(const StageFacts& facts, const std::string& subject, const WallTension& found, Trace& trace) {
  const auto rupture = cracking_stress_of(facts, trace, found.thickness);
  Finding finding = compared<Stress>(wall_rule, subject, Demand<Stress>{found.tension}, rupture,
                                     facts.rules.cracking.factor.value.value(), std::string(cracking_clause(facts)));
  finding.situation = found.situation;
  if (finding.result != Result::fail) return finding;
  const UnitSystem units = facts.plan.piece.units;
  finding.text = fmt::format("{} bends the {}: {} of tension, {} is allowed before it cracks", subject, found.what,
                             firstpick::print(found.tension, units, Rounding::up),
                             firstpick::print(std::get<Stress>(*finding.capacity), units, Rounding::down));
  finding.remedy = remedy_of(found);
  return finding;
}

Finding not_measured(const StageFacts& facts, const std::string& subject, const NotAssessed& gap) {
  if (is_stated(facts.plan.piece.bending_check))
    return noted(wall_rule, subject,
                 fmt::format("bending of its wall is checked elsewhere, as the plan states: {}", facts.plan.piece.bending_check));
  return missing(wall_rule, subject, gap.why,
                 gap.remedy.empty() ? "[piece] bending_check: name the engineer's own check of its bending" : gap.remedy);
}

}  // namespace

std::vector<Finding> insert_wall_bending(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  const bool covered = pulls_are_in_its_bending(facts);
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const std::string& subject = facts.plan.inserts[i].id;
    if (covered || bends_with_the_piece(facts, i)) {
      findings.push_back(passed(wall_rule, subject));
      continue;
    }
    if (const auto gap = bending_gap(facts)) {
      findings.push_back(missing(wall_rule, subject, gap->why, gap->remedy));
      continue;
    }
    trace.about([&] { return fmt::format("{}: {}, insert {}", plan::word_for(facts.stage.kind), wall_rule, subject); });
    const auto found = insert_wall_tension(facts, i, trace);
    if (const auto* unknown = std::get_if<NotAssessed>(&found)) {
      findings.push_back(not_measured(facts, subject, *unknown));
      continue;
    }
    const auto& tension = std::get<std::optional<WallTension>>(found);
    findings.push_back(tension ? against_rupture(facts, subject, *tension, trace) : passed(wall_rule, subject));
  }
  return findings;
}

}  // namespace firstpick::checks
