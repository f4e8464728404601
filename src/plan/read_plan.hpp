// TOML -> Plan, or every fault of the file in one run.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "plan/layout.hpp"
#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

// `file` is used in messages only; `text` is the whole plan. `tables` gives the words that keys may take
// (finishes, steels, concretes, slings, hoists, rule sets).
std::variant<Plan, std::vector<Diagnostic>> read_plan(const std::string& file, std::string_view text,
                                                      const tables::Tables& tables);

// With what `firstpick layout` may change in it, where the plan says so.
struct PlanWithLayout {
  Plan plan;
  std::optional<Layout> layout;
};
std::variant<PlanWithLayout, std::vector<Diagnostic>> read_plan_with_layout(const std::string& file, std::string_view text,
                                                                            const tables::Tables& tables);

}  // namespace firstpick::plan
