// Which inserts count as sitting in uncracked concrete in this stage, by EN 1992-4.
//
//   uncracked: the plan says so, and piece-cracking was computed and passes in this stage at this strength, and no insert
//              cracks the wall or slab it sits in (insert-wall-bending), and
//              c >= k_sp r_sp h_ef towards every edge, and the concrete behind is at least h_min = r_h h_ef thick,
//              so that splitting needs no check                                                  else cracked
//
// Source   that lifting inserts may count on uncracked concrete: scope of CEN/TR 15728 (2008), read; it rests on production
//          control of cracks. Splitting: EN 1992-4:2018 7.2.1.7, second-hand; cracked resistances need no check of it where
//          bars limit cracks to 0.3 mm, which the cautions of the rule set tell.
// Range    a model of EN 1992-4; ACI 318 takes the plan's own word, as before. A block whose bending is not computed, and a
//          piece that turns: cracked.

#include "checks/cracked_inserts.hpp"

#include <algorithm>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

bool cannot_split(const resistances::HeadedInsert& insert, const tables::En1992HeadedModel& en) {
  return insert.edges.nearest >= en.split_edge.value * en.split_extent.value * insert.h_ef &&
         insert.site->thickness >= en.split_thickness.value * insert.h_ef;
}

bool is_shown_uncracked(const StageFacts& facts) {
  Trace silent;
  const std::vector<Finding> findings = piece_cracking(facts, silent), walls = insert_wall_bending(facts, silent);
  if (!std::ranges::all_of(walls, [](const Finding& finding) { return finding.result == Result::pass; })) return false;
  return !findings.empty() && std::ranges::all_of(findings, [](const Finding& finding) {
    return finding.result == Result::pass && finding.utilization;  // computed, not waved through
  });
}

}  // namespace

void count_cracks(StageFacts& facts, bool bending_is_known) {
  facts.as_cracked.clear();
  const auto& en = facts.rules.headed.en;
  if (!en) return;
  const auto& drawn = facts.anchorage.headed;
  const auto says_uncracked = [](const auto& one) {
    return is_assessed(one) && !std::get<resistances::HeadedInsert>(one).cracked;
  };
  if (std::ranges::none_of(drawn, says_uncracked)) return;
  const bool whole = bending_is_known && is_shown_uncracked(facts);
  facts.as_cracked = drawn;
  for (auto& one : facts.as_cracked)
    if (auto* insert = std::get_if<resistances::HeadedInsert>(&one); insert && !(whole && cannot_split(*insert, *en)))
      insert->cracked = true;
}

}  // namespace firstpick::checks
