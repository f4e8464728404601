// The one table of a record and the triggers that guard it, as SQL.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace firstpick::decision_log {

// "FPD1", "FPD2": in the header of the file.
constexpr int application_id(int format) { return 0x46504430 + format; }

// Name and statement of each, in the order in which they are made.
std::vector<std::pair<std::string, std::string>> schema(int format);

// "number, decided_at, ..., previous, hash"
std::string columns(int format);

}  // namespace firstpick::decision_log
