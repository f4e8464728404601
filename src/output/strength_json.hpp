// A strength report for other programs. Format 1; SI, the unit in the key; the same input gives the same bytes.
#pragma once

#include <string>
#include <vector>

#include "checks/strength_report.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

std::string strength_json(const checks::StrengthReport& report);
std::string strength_faults_json(const std::string& file, const std::vector<Diagnostic>& faults);

}  // namespace firstpick::output
