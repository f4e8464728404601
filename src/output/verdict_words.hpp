// A verdict as every output shows it: mark and word, never colour alone.
#pragma once

#include <string>
#include <string_view>

#include "checks/report.hpp"

namespace firstpick::output {

std::string_view mark_for(checks::Verdict verdict);  // "(+)", "(?)", "(x)"
std::string verdict_words(checks::Verdict verdict,
                          bool colour = false);  // "(+) GO", in colour for a terminal

}  // namespace firstpick::output
