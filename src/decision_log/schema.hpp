// The one table of a record and the triggers that guard it, as SQL.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace firstpick::decision_log {

inline constexpr int application_id = 0x46504431;  // "FPD1", in the header of the file

// Name and statement of each, in the order in which they are made.
const std::vector<std::pair<std::string, std::string>>& schema();

// "number, decided_at, ..., previous, hash"
const std::string& columns();

}  // namespace firstpick::decision_log
