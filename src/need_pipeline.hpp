// firstpick need on one page: plan text -> Plan -> Body -> stage facts -> the rules again and again -> NeedReport.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/need_report.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// `rules` as in check_plan. Same file name, text, rules and tables: same report.
std::variant<checks::NeedReport, std::vector<Diagnostic>> need_of_plan(const std::string& file, std::string_view text,
                                                                       const std::string& rules,
                                                                       const tables::Tables& tables);

}  // namespace firstpick
