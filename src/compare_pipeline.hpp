// firstpick check with several rule sets on one page: plan text -> Plan -> Body -> a report by each rule set -> what parts them.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "comparison/comparison.hpp"
#include "record/diagnostic.hpp"
#include "sign_off.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// The ids in "us,eu". One or more, each of the tables, none empty, none twice; else what is wrong with the list, without a
// file.
std::variant<std::vector<std::string>, Diagnostic> rule_sets_in(std::string_view list, const tables::Tables& tables);

// `rules`: two or more ids of the tables. Same file name, text, rules, tables and sign-off: same comparison.
std::variant<comparison::Comparison, std::vector<Diagnostic>> compare_plan(const std::string& file, std::string_view text,
                                                                           const std::vector<std::string>& rules,
                                                                           const tables::Tables& tables,
                                                                           const std::optional<SignOffText>& sign_off = {});

}  // namespace firstpick
