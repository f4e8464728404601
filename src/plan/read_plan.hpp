// TOML -> Plan, or every fault of the file in one run.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

// `file` is used in messages only; `text` is the whole plan. `tables` gives the words that keys may take
// (finishes, steels, concretes, slings, hoists, rule sets).
std::variant<Plan, std::vector<Diagnostic>> read_plan(const std::string& file, std::string_view text,
                                                      const tables::Tables& tables);

}  // namespace firstpick::plan
