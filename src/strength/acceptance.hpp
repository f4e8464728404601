// Strength tests of a season against the specified strength. Standard-cured: they judge the mix, never a lift.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "record/diagnostic.hpp"
#include "record/outcome.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct SeasonTest {
  std::string name;
  std::vector<Stress> results;  // of one sample
  Place place;
};

struct JudgedTest {
  std::string name;
  Stress mean{};
  Ratio relative_range{};
  std::optional<Stress> mean_of_run;  // from the run's last test on
  bool run_fails = false, single_fails = false;
};

struct Acceptance {
  Stress specified{}, least_single{};
  std::vector<JudgedTest> tests;      // in the order of the file
  Stress mean{};
  std::optional<Stress> deviation;            // of the tests
  std::optional<Stress> within_test;          // from the ranges, where all tests have two or all three results
  bool accepted = false;
};

// Not assessed: no test; a test without results; a number that is not above zero.
// A mean counts as reaching its limit within a relative 1e-9, as print does: 3500 psi by three additions is
// 3500 psi.
Outcome<Acceptance> acceptance(const std::vector<SeasonTest>& tests, Stress specified,
                               const tables::AcceptanceLimits& limits);

// A file of tests: `test,result 1 [psi],result 2 [psi]`; cells of results may be empty, not all of a row.
std::variant<std::vector<SeasonTest>, std::vector<Diagnostic>> read_season(const std::string& file,
                                                                           std::string_view text);

}  // namespace firstpick::strength
