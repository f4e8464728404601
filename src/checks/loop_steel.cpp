// The steel of a loop does not break.
//
//   T <= R / n      T: pull in the more loaded leg (demands/loop_share.hpp)      R: resistances/loop_leg_steel.cpp
//
// Source   the certificate of strand, the table of steels for bar (docs/rules/loop-steel.md).
// Note     a loop of wire rope with a rating: what it loses in its bend is in its supplier's declaration.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"

namespace firstpick::checks {

std::vector<Finding> loop_steel(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-steel";
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (stands_on_its_rating(insert))
      return noted(id, insert.id, "what the rope loses in its bend is not known here: the loop stands on its supplier's rating");
    const auto grip = loop_grip(facts, i, trace);
    Outcome<Resistance<Force>> steel = NotAssessed{};
    if (const auto* gap = std::get_if<NotAssessed>(&grip)) steel = *gap;
    else
      steel = resistances::loop_leg_steel(insert, std::get<resistances::LoopGrip>(grip), facts.rules, facts.tables, trace);
    return leg_against(id, facts, i, worst_loop_pull(facts, i, LoopWorst::by_leg), steel, "a leg of the loop breaks",
                       "thicker or more loops, steeper slings", trace);
  });
}

}  // namespace firstpick::checks
