// What a verdict rests on, in one number: SHA-256 over program version, rule set, plan and tables.
#pragma once

#include <string>
#include <string_view>

#include "tables/tables.hpp"

namespace firstpick {

// 64 hexadecimal digits. A change of any byte of the plan, of any table, of the rule set or of the program changes it.
std::string fingerprint_of(std::string_view plan_text, std::string_view rules, const tables::Tables& tables);

}  // namespace firstpick
