// Temperature, equivalent age and strength over the time since the pour, as a picture (cairo stays inside).
#pragma once

#include <string>

#include "checks/strength_report.hpp"

namespace firstpick::output {

// Writes to `path` by its ending, ".svg" or ".png". Empty where that succeeded, else what went wrong.
// Same report, same bytes. A report without a temperature log has nothing to draw: that is an answer of its own.
std::string draw_strength_plot(const checks::StrengthReport& report, const std::string& path);

}  // namespace firstpick::output
