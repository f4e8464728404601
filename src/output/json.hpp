// The answers of the program for other programs: JSON, format 1, SI, the unit in the key.
#pragma once

#include <string>
#include <vector>

#include "checks/report.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

// One report as design says; several as an array, in the order of the command line. A plan that could not be read is an
// element with "errors" instead of a verdict.
struct Answer {
  std::string file;
  const checks::Report* report = nullptr;             // null: the plan could not be read
  const std::vector<Diagnostic>* faults = nullptr;
};
std::string json(const std::vector<Answer>& answers);

}  // namespace firstpick::output
