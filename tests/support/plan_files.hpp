// The plan files of the repository and the program's own tables, for tests of the whole program. Paths are from the top of
// the source tree, where CTest runs every test.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/report.hpp"
#include "pipeline.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::tests {

// The tables of the repository, read once. A fault in them ends the test program.
const tables::Tables& real_tables();

std::string contents_of(const std::string& file);  // fails the test where the file cannot be read

std::vector<std::string> demo_plans();                             // docs/demo
std::vector<std::string> test_plans(const std::string& folder);    // tests/plans/<folder>: "ok", "hold", "nogo"
std::vector<std::string> all_plans();                              // all of these

// The report on a plan that reads; its diagnostics fail the test.
checks::Report report_on(const std::string& file, std::string_view text);
checks::Report report_on(const std::string& file);

CheckedPlan checked_plan(const std::string& file);  // with what the report was made from

using Answered = std::variant<checks::Report, std::vector<Diagnostic>>;
Answered answer_to(std::string_view text);  // of a plan in memory, called plan.toml

}  // namespace firstpick::tests
