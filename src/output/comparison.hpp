// Several rule sets on one piece, side by side: for a terminal, and for other programs.
#pragma once

#include <string>
#include <vector>

#include "comparison/comparison.hpp"
#include "output/terminal.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

// Verdicts and what they mean together, then stage by stage loads, uses and what parts them, then what all rests on. Every use
// of every subject where `style` asks for all findings, else the worst subject of each rule.
std::string comparison_text(const comparison::Comparison& comparison, const TerminalStyle& style);

// Format 1, SI, the unit in the key: the report of each rule set as output::json gives it, and what parts them. Several plans
// as an array; a plan that could not be read is an element with "errors".
struct ComparedAnswer {
  std::string file;
  const comparison::Comparison* comparison = nullptr;  // null: the plan could not be read
  const std::vector<Diagnostic>* faults = nullptr;
};
std::string comparison_json(const std::vector<ComparedAnswer>& answers);

}  // namespace firstpick::output
