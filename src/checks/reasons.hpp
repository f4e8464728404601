// Why a verdict is what it is, each reason once, however many rules and subjects it stops.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"

namespace firstpick::checks {

// What is missing is the same for all that say the same; what fails is told once for each rule, at its worst
// subject.
struct Reason {
  Result result = Result::missing;
  std::string_view rule;
  double utilization = 0.0;
  std::string text, remedy;
  std::vector<std::string> stages, rules, subjects;
};

// Of all findings with this result, in their order.
std::vector<Reason> reasons(std::span<const StageReport> stages, Result result);

}  // namespace firstpick::checks
