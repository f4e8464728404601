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

// When the concrete of the pour was placed: by its log, else by its specimens.
std::optional<plan::Timestamp> cast_of(const checks::StrengthQuestion& pour);

// Why a piece cast at one time is not of the pour of another: cast later, it is younger than the specimens; cast earlier
// by more than a pour lasts, it is of another one. Both as instants.
std::optional<NotAssessed> other_pour(const plan::Timestamp& piece, const plan::Timestamp& pour,
                                      const tables::RuleSet& rules);

}  // namespace firstpick::board
