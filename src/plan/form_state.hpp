// What of the form is still at the piece in a stage. `stage` is an element of plan.stages; of another one only its kind
// counts.
#pragma once

#include "plan/plan.hpp"

namespace firstpick::plan {

// The stage strip; and the first stage of the plan, whatever its kind, unless [form] says that the piece is released.
bool comes_out_of_form(const Plan& plan, const Stage& stage);

// Whether a form part hangs on the piece in this stage.
enum class PartIs { on, off, perhaps };  // perhaps: nobody said when it is taken off
PartIs part_in(const Plan& plan, const Stage& stage, const Attached& part);

// A part that perhaps is off.
bool parts_may_be_off(const Plan& plan, const Stage& stage);

}  // namespace firstpick::plan
