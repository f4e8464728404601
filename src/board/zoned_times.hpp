// Local times of plans and pours as instants, by the zone of the shift.
#pragma once

#include <optional>

#include "checks/evaluate_strength.hpp"
#include "plan/shift_file.hpp"

namespace firstpick::board {

// Every moment without an offset gets that of the zone. The first that has no single meaning there comes
// back.
std::optional<plan::ZoneFault> put_into_zone(plan::Plan& plan, const clock::Zone& zone);
std::optional<plan::ZoneFault> put_into_zone(checks::StrengthQuestion& pour, const clock::Zone& zone);

// Every strip stage is asked at `now`, whatever the plan says; a later stage keeps its time, but not one
// before `now`.
void ask_at(plan::Plan& plan, const plan::Timestamp& now);

}  // namespace firstpick::board
