// The answer of `firstpick need`: for a terminal, and for another program.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "checks/need_report.hpp"

namespace firstpick::output {

// What stands under every answer.
std::vector<std::string> need_cautions(UnitSystem units);

std::string need_text(const checks::NeedReport& report, std::size_t width);

// SI, the unit in the key.
std::string need_json(const checks::NeedReport& report);

}  // namespace firstpick::output
