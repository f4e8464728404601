// When the pour is predicted to have the strength that its pieces wait for. Told, and never a reason to lift.
#pragma once

#include <optional>

#include "board/board.hpp"
#include "checks/evaluate_strength.hpp"
#include "checks/stage_facts.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::board {

// The least strength, to 0.05 MPa above it, with which the same check would be GO: at least what the stages
// require, more where the inserts need more. Found by making the check with specimens that show a strength;
// nothing else of those checks is shown. Nothing where strength is not all that the plan waits for, or `most`
// is not enough either.
std::optional<Stress> strength_that_goes(const plan::Plan& plan, const piece::Body& body,
                                         const tables::RuleSet& rules, const tables::Tables& tables,
                                         const plan::Timestamp& now, Stress most, checks::KnownBending& bending);

// The time at which the growth curve of the pour has `strength`, or the calibration of its mix where that tells a later
// one. None where the specimens of the calibration never had it. None where specimens of the pour have been
// broken and the curve says that they should have shown it: the curve is wrong for this pour.
Expected expected_strength(const checks::StrengthQuestion& pour, Stress strength,
                           const tables::RuleSet& rules, const tables::Tables& tables,
                           const plan::Timestamp& now);

}  // namespace firstpick::board
