// What each section says rightly for itself and the plan as a whole cannot mean.
#pragma once

#include "plan/fields.hpp"

namespace firstpick::plan {

// A leg twice to one insert, groups that share a leg or have none, legs too short to meet, inserts without a
// leg.
void check_riggings(const Plan& plan, Reading& reading);

// A form that the piece left before, and is stripped from; a form part that goes at a stage that there is not.
void check_form(const Plan& plan, Reading& reading);

// A stage strip behind another, a stage behind set.
void check_order_of_stages(const Plan& plan, Faults& faults);

// Tested or lifted before it was cast; moments with and without an offset from UTC in one plan.
void check_moments(Reading& reading);

}  // namespace firstpick::plan
