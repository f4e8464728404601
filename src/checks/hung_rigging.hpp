// The rigging of a stage as the statics need it: bodies, ends of the legs, lengths, stiffness, ropes.
#pragma once

#include "demands/hanging.hpp"
#include "loads/load_sets.hpp"
#include "plan/plan.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::checks {

// Not assessed: no rigging, a leg without a length or to nothing, a beam or sheave without its weight.
Outcome<demands::HungPiece> hung_piece(const plan::Plan& plan, const plan::Rigging* rigging,
                                       const loads::LoadSet& set, const tables::RuleSet& rules);

}  // namespace firstpick::checks
