// Which way up the piece is before and after a stage: as cast, until a turn stage turns it.
#pragma once

#include "demands/turning_frame.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"

namespace firstpick::checks {

// The axes of the stage's turn. Not assessed: no [stage.turn], or without what its method needs.
Outcome<demands::TurningFrame> frame_of(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body);

// The vertical in piece axes. `stage` is an element of plan.stages.
// Not assessed: a turn before that is not.
Outcome<Direction> up_before(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body);
Outcome<Direction> up_after(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body);

}  // namespace firstpick::checks
