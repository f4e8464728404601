// A strength report for a terminal: the answer, what it rests on, maturity, planning, cautions.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "checks/strength_report.hpp"
#include "output/terminal.hpp"

namespace firstpick::output {

// `sparkline`: a line of blocks each for temperature, equivalent age and estimated strength; for a reader who sits at the
// terminal. In that of the strength a bar stands where it reaches what is needed.
std::string strength_text(const checks::StrengthReport& report, const TerminalStyle& style, bool sparkline);

// Eight heights of blocks from `low` to `high`, at most `columns` of them; empty for fewer than two values. A bar before
// the first value at or above `needed`.
std::string sparkline_of(const std::vector<double>& values, double low, double high, std::size_t columns,
                         double needed = std::numeric_limits<double>::infinity());

}  // namespace firstpick::output
