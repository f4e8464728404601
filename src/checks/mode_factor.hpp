// The factor between what a headed insert holds and what it may be asked for, by the safety format of the rule set.
#pragma once

#include <string>
#include <vector>

#include "checks/mode_check.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct ModeFactor {
  double value = 0.0;
  std::string symbol, clause;
  std::vector<Source> sources;
};

// One factor on the inserts, or the partial factor of EN 1992-4 of what fails. 1 where the facts are held against what
// breaks the insert. Of an insert that is assessed.
ModeFactor mode_factor(Mode mode, const StageFacts& facts, std::size_t insert, Trace& trace);
double mode_factor(Mode mode, const StageFacts& facts, std::size_t insert);

// "EN 1992-4 7.2.1.4" or "ACI 318-19 17.6.2".
std::string_view clause_of(Mode mode, const tables::RuleSet& rules);

}  // namespace firstpick::checks
