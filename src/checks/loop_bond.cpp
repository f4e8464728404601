// A leg of a loop does not slip out of the concrete.
//
//   T <= R / n      T: pull in the more loaded leg (demands/loop_share.hpp)      R: resistances/loop_leg_bond.cpp
//
// Source   tests of loops of strand, and the bond of plain bar of BS 8110: tables/loops.toml (docs/rules/loop-bond.md).
// Note     a loop of wire rope with a rating: no bond of rope was read anywhere, and its supplier's declaration covers it.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"

namespace firstpick::checks {

namespace {

Outcome<Resistance<Force>> bond_of(const StageFacts& facts, std::size_t i, Trace& trace) {
  const plan::Insert& insert = facts.plan.inserts[i];
  if (!facts.tables.loops) return NotAssessed{"the table of loops is not there", "tables/loops.toml"};
  if (const auto* gap = std::get_if<NotAssessed>(&facts.usable_strength)) return *gap;
  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) return *gap;
  const auto grip = loop_grip(facts, i, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&grip)) return *gap;
  const resistances::LoopFacts known{.usable = std::get<Stress>(facts.usable_strength),
                                     .formula = std::get<Stress>(facts.formula_strength),
                                     .grip = std::get<resistances::LoopGrip>(grip),
                                     .documented = is_stated(insert.engineers_document)};
  return resistances::loop_leg_bond(insert, known, *facts.tables.loops, trace);
}

}  // namespace

std::vector<Finding> loop_bond(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-bond";
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (stands_on_its_rating(insert))
      return noted(id, insert.id, "no bond of wire rope is known here: the loop stands on its supplier's rating");
    return leg_against(id, facts, i, worst_loop_pull(facts, i, LoopWorst::by_leg), bond_of(facts, i, trace),
                       "a leg of the loop slips out", "longer legs in the concrete, more strength before lifting, steeper slings",
                       trace);
  });
}

}  // namespace firstpick::checks
