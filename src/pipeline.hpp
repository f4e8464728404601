// The whole program on one page: plan text -> Plan -> Body -> stage facts -> findings -> Report.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "sign_off.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// A plan that reads, its solid and its rule set: all that a check needs and that no strength or time changes.
struct PreparedPlan {
  plan::Plan plan;
  piece::Body body;
  const tables::RuleSet& rules;  // of the tables
};

std::variant<PreparedPlan, std::vector<Diagnostic>> prepare_plan(const std::string& file, std::string_view text,
                                                                   const std::string& rules,
                                                                   const tables::Tables& tables);

// Checks one plan. `rules` overrides the rule set that the plan names; empty: the plan's, else "us", printed either way.
// `sign_off` is the text of the file beside the plan; absent: nobody has signed it.
// Same file name, text, rules, tables and sign-off: same report, on every run and machine.
std::variant<checks::Report, std::vector<Diagnostic>> check_plan(const std::string& file, std::string_view text,
                                                                 const std::string& rules,
                                                                 const tables::Tables& tables,
                                                                 const std::optional<SignOffText>& sign_off = {});

// The same, with what the report was made from: for the lift card, which draws the piece and lists the gear.
struct CheckedPlan {
  plan::Plan plan;
  piece::Body body;
  checks::Report report;
};
std::variant<CheckedPlan, std::vector<Diagnostic>> check_plan_whole(const std::string& file, std::string_view text,
                                                                    const std::string& rules,
                                                                    const tables::Tables& tables,
                                                                    const std::optional<SignOffText>& sign_off = {});

// The rule set to use: `rules`, else the plan's, else "us".
std::variant<const tables::RuleSet*, Diagnostic> chosen_rules(const std::string& file, const std::string& rules,
                                                              const plan::Plan& plan, const tables::Tables& tables);

}  // namespace firstpick
