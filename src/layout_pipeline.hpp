// firstpick layout on one page: plan text -> Plan, what may move, Body -> search on the rules -> the plan written anew, read
// again and checked again -> LayoutReport.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "layout/report.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// `rules` as in check_plan; `tell` is called with the number of layouts judged so far. Same file name, text, rules and
// tables: same report.
std::variant<layout::LayoutReport, std::vector<Diagnostic>> layout_of_plan(
    const std::string& file, std::string_view text, const std::string& rules, const tables::Tables& tables,
    const std::function<void(std::size_t)>& tell = [](std::size_t) {});

}  // namespace firstpick
