// Which parts of the calculation the sheet prints.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "checks/report.hpp"

namespace firstpick::sheet {

struct StepGroup {
  std::string about;  // "strip: insert-breakout, insert A1, breaking free"
  std::vector<const Step*> steps;
};

struct ChosenSteps {
  std::vector<StepGroup> groups;  // in the order of the calculation
  std::size_t left_out = 0;       // groups
};

// All, or without the same rule on inserts for which another insert of the stage is worse.
ChosenSteps chosen_steps(const checks::Report& report, bool all);

}  // namespace firstpick::sheet
