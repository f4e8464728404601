// The rigging of a stage as the statics need it: bodies, ends of the legs, lengths, stiffness, ropes.
#pragma once

#include "demands/hanging.hpp"
#include "loads/load_sets.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::checks {

// Null where the plan states E A, or gives no size, or the table knows no stiffness of that kind.
const Sourced<Stress>* stiffness_by_size(const plan::Sling& sling, const tables::Tables& tables);
bool has_stiffness_by_size(const plan::Plan& plan, const plan::Rigging& rigging, const tables::Tables& tables);

// The step of it for each sling of the rigging that has one.
void record_stiffness(const plan::Plan& plan, const plan::Rigging* rigging, const tables::Tables& tables, Trace& trace);

// E A of a leg that the plan does not state: by the size of its sling and tables/slings.toml (E A = k d^2),
// else so much of the load that it is nearly rigid (leg_stiffness_ratio of the rule set).
// Not assessed: no rigging, a leg without a length or to nothing, a beam or sheave without its weight.
Outcome<demands::HungPiece> hung_piece(const plan::Plan& plan, const plan::Rigging* rigging,
                                       const loads::LoadSet& set, const tables::RuleSet& rules,
                                       const tables::Tables& tables);

// The same on legs that are all nearly rigid but for those whose stiffness the plan states.
demands::HungPiece on_nearly_rigid_legs(demands::HungPiece hung, const plan::Plan& plan,
                                        const plan::Rigging& rigging, const loads::LoadSet& set,
                                        const tables::RuleSet& rules);

}  // namespace firstpick::checks
