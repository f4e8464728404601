// What one leg of a loop holds in the concrete and in itself, before any factor of the rule set.
#pragma once

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"

namespace firstpick::resistances {

enum class LoopGrip { pin, hook };  // a pin as thick as in the tests, or a hook

// What the plan states of the concrete and the loop that the tables cannot say.
struct LoopFacts {
  Stress usable;    // strength shown by specimens
  Stress formula;   // the same, credited and floored as the anchor formulas want it
  LoopGrip grip;    // of strand
  bool documented;  // the engineer's document is named: his own bond may be used
};

// Least of the values on which sources disagree.
template <class Q>
const Sourced<Q>& lowest(const std::vector<Sourced<Q>>& all) {
  const Sourced<Q>* least = &all.at(0);
  for (const Sourced<Q>& one : all)
    if (one.value < least->value) least = &one;
  return *least;
}

// Bond along the embedded length of one leg. Not assessed: wire rope, a strand thicker or more of them than were
// tested, an offset beyond that of the tests, anything absent or not a number above zero.
Outcome<Resistance<Force>> loop_leg_bond(const plan::Insert& insert, const LoopFacts& facts,
                                         const tables::LoopModel& model, Trace& trace);

// Steel of one leg: the breaking load of strand or rope, area times credited strength of a bar.
Outcome<Resistance<Force>> loop_leg_steel(const plan::Insert& insert, LoopGrip grip, const tables::RuleSet& rules,
                                          const tables::Tables& tables, Trace& trace);

// Whether a strand is bent as the tests bent it: a hook, or a pin at least as thick. Not assessed otherwise.
Outcome<LoopGrip> strand_grip(const plan::Insert& insert, bool over_hook, const tables::LoopModel& model, Trace& trace);

}  // namespace firstpick::resistances
