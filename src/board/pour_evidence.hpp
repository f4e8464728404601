// Which strength evidence a piece is checked with: that of its plan, or that of its pour, never a mix of
// both.
#pragma once

#include "checks/evaluate_strength.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"

namespace firstpick::board {

// The concrete of the plan with the broken specimens of the pour. Times of both as instants
// (zoned_times.hpp).
//
//   plan has specimens   pour has specimens   checked with
//   no                   no                   none: HOLD by the check
//   no                   yes                  those of the pour
//   yes                  no                   those of the plan, if both name the same time of casting
//   yes                  yes                  those of the pour, if they are the same in every respect
//
// Not assessed: anything else; a pour that asks for more strength than the plan's drawing; a pour whose
// specimens and temperature log name different times of casting. Only specimens are handed on: what maturity
// or a growth curve says of the pour carries no lift here, even where the rule set takes maturity for the
// strength alone.
Outcome<plan::Concrete> concrete_of(const plan::Concrete& of_plan, const checks::StrengthQuestion& pour);

}  // namespace firstpick::board
