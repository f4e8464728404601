// One plan with the evidence of its pour, checked as `firstpick check` does, at the time of the board.
#pragma once

#include <optional>
#include <string>

#include "board/board.hpp"
#include "checks/evaluate_strength.hpp"
#include "checks/stage_facts.hpp"
#include "clock/zone.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::board {

struct PieceQuestion {
  const plan::Plan& plan;
  const piece::Body& body;
  const tables::RuleSet& rules;
  const checks::StrengthQuestion* pour = nullptr;  // null: the shift file names none
  const clock::Zone& zone;
  plan::Timestamp now;  // with its offset
  std::optional<plan::Timestamp> cast = {};  // of the pieces, by the shift file; with its offset
  checks::SignOffState sign_off = {};
  checks::KnownBending* bending = nullptr;  // of this plan, kept for its next pour; null: only for this answer
};

struct PieceAnswer {
  Judged judged;
  checks::Report report;
};

// The verdict is that of the check; where plan and pour contradict each other, the piece is of another pour, the
// temperature log of the pour is in doubt, or a time has no single meaning in the zone, the check is made without any
// strength evidence and gets the reason, so that it is HOLD or NO-GO.
PieceAnswer judge_piece(const PieceQuestion& question, const tables::Tables& tables, std::string fingerprint);

// A line that could not be checked: HOLD, with the first fault of its files.
Judged not_checked(const std::string& first_fault);

// Outside the hours of the shift nothing goes: a GO becomes a HOLD that says so.
void hold_outside_shift(Board& board);

// A page is old, at the latest, when the shift ends or the evidence of a line that is GO runs out.
void limit_age(Board& board);

}  // namespace firstpick::board
