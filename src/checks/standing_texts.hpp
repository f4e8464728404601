// What every output says whatever the plan: cautions, choices of the rule set in words, and what is not checked.
#pragma once

#include <string>
#include <vector>

#include "tables/rule_set.hpp"

namespace firstpick::checks {

std::vector<std::string> cautions_of(const tables::RuleSet& rules);
std::vector<std::string> choices_of(const tables::RuleSet& rules);
std::vector<std::string> not_checked();

}  // namespace firstpick::checks
