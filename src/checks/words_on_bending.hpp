// How a plan's bending was settled where the program did not find that the piece stays uncracked: for lists of many plans.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "checks/report.hpp"
#include "plan/plan.hpp"

namespace firstpick::checks {

// "may crack, as the engineer states", "bending checked elsewhere, as the plan states: sheet 6"; none where the program
// computed it, or where it fails or is missing.
std::vector<std::string> words_on_bending(const plan::Plan& plan, std::span<const StageReport> stages);

}  // namespace firstpick::checks
