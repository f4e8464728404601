// A strength report for a terminal: the answer, what it rests on, maturity, planning, cautions.
#pragma once

#include <string>

#include "checks/strength_report.hpp"
#include "output/terminal.hpp"

namespace firstpick::output {

// `sparkline`: one line of blocks for the temperature of the log; for a reader who sits at the terminal.
std::string strength_text(const checks::StrengthReport& report, const TerminalStyle& style, bool sparkline);

// Eight heights of blocks for rising values, at most `columns` of them; empty for fewer than two points.
std::string sparkline_of(const std::vector<checks::MaturityPoint>& points, std::size_t columns);

}  // namespace firstpick::output
