// What a verdict rests on, in one number: SHA-256 over program version, rule set, plan and tables.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tables/tables.hpp"

namespace firstpick {

// 64 hexadecimal digits. A change of any byte of the plan, of any table, of the rule set or of the program changes it.
std::string fingerprint_of(std::string_view plan_text, std::string_view rules, const tables::Tables& tables);

// Of the parts, each behind its length: 64 hexadecimal digits.
std::string sha256_of(const std::vector<std::string_view>& parts);

}  // namespace firstpick
