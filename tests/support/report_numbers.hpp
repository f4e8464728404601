// The numbers of a report under names, so that two reports can be held side by side.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "checks/report.hpp"

namespace firstpick::tests {

using Numbers = std::map<std::string, double>;

// "strip insert-breakout A1" -> demand over capacity, where there is one.
Numbers utilizations(const checks::Report& report);

// Every number of a report that does not depend on where the axes of the piece are.
Numbers all_numbers(const checks::Report& report);

// "strip insert-breakout A1 fail", one for each finding.
std::vector<std::string> outcomes(const checks::Report& report);

// Numbers under the same names, each within `relative` of the other; below 1 (kN, MPa, deg) within `relative` itself.
// Empty where they agree; else the first difference in words.
std::string difference(const Numbers& a, const Numbers& b, double relative);

}  // namespace firstpick::tests
