// The report for a terminal: verdict, why, what governs in each stage, then what the verdict rests on.
//
// Words and marks carry the verdict: (+) GO, (?) HOLD, (x) NO-GO; colour only repeats them. Text that comes from files
// is printed with control characters and bidirectional overrides escaped.
#pragma once

#include <cstddef>
#include <string>

#include "checks/report.hpp"

namespace firstpick::output {

struct TerminalStyle {
  std::size_t width = 80;
  bool colour = false;
  bool all_findings = false;  // every finding of every stage instead of the governing ones
  bool steps = false;         // the calculation behind them
};

std::string terminal(const checks::Report& report, const TerminalStyle& style);

// The calculation, step by step, as the trace recorded it.
std::string steps(const checks::Report& report, std::size_t width);
std::string steps(const Trace& trace, std::size_t width);

}  // namespace firstpick::output
