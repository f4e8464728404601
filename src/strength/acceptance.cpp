// Acceptance of strength tests over a season.
//
//   (a)  mean of each run of n_run consecutive tests >= f'c
//   (b)  each test >= f'c - d for f'c <= f_lim, else >= q f'c
//   s_1 = mean range / d_2
//
// Source   ACI 318-14 26.12.3.1, quoted; d_2 of ACI 214R (from memory): tables/acceptance.toml.
// Inputs   tests of standard-cured specimens at the age of the specification, each the mean of its results.
// Range    a season of fewer tests than a run is judged by (b) alone.

#include "strength/acceptance.hpp"

#include <cmath>

#include <fmt/format.h>

#include "strength/break_statistics.hpp"
#include "strength/csv.hpp"
#include "units/parse.hpp"

namespace firstpick::strength {

namespace {

bool reaches(Stress value, Stress limit) { return value >= limit * (1.0 - 1e-9); }

// Standard deviation within tests; empty where the numbers of results differ or the table has no factor.
std::optional<Stress> within_test(const std::vector<SeasonTest>& tests, const tables::AcceptanceLimits& limits) {
  const std::size_t n = tests.front().results.size();
  if (n != 2 && n != 3) return {};
  Stress ranges{};
  for (const SeasonTest& test : tests) {
    if (test.results.size() != n) return {};
    ranges += std::get<BreakStatistics>(break_statistics(test.results)).range;
  }
  const Ratio d2 = n == 2 ? limits.d2_of_two.value : limits.d2_of_three.value;
  return ranges / static_cast<double>(tests.size()) / d2;
}

}  // namespace

Outcome<Acceptance> acceptance(const std::vector<SeasonTest>& tests, Stress specified,
                               const tables::AcceptanceLimits& limits) {
  if (tests.empty()) return NotAssessed{"the season has no test", {}};
  if (!(specified > Stress{}) || !is_finite(specified))
    return NotAssessed{"the specified strength of the season is not a usable number", {}};
  const double least_tests = limits.run_length.value.value();
  if (!(static_cast<double>(tests.size()) >= least_tests))
    return NotAssessed{fmt::format("the season has {} test{}: its runs are of {:g}", tests.size(),
                                   tests.size() == 1 ? "" : "s", least_tests),
                       {}};
  Acceptance judged{.specified = specified};
  judged.least_single = specified <= limits.drop_up_to.value ? Stress{specified - limits.single_drop.value}
                                                             : Stress{specified * limits.share_above.value};
  judged.accepted = true;
  const auto run = static_cast<std::size_t>(limits.run_length.value.value());
  std::vector<Stress> means;
  for (const SeasonTest& test : tests) {
    const auto found = break_statistics(test.results);
    if (const auto* gap = std::get_if<NotAssessed>(&found))
      return NotAssessed{fmt::format("test '{}': {}", test.name, gap->why), gap->remedy};
    const auto& of = std::get<BreakStatistics>(found);
    if (!(static_cast<double>(of.n) >= limits.least_results.value.value()))
      return NotAssessed{fmt::format("test '{}' has {} result: a test is the mean of at least {:g}", test.name, of.n,
                                     limits.least_results.value.value()),
                         "write all results of the test, or leave it out"};
    means.push_back(of.mean);
    JudgedTest line{.name = test.name, .mean = of.mean, .relative_range = of.relative_range};
    if (run > 0 && means.size() >= run) {
      Stress sum{};
      for (std::size_t i = means.size() - run; i < means.size(); ++i) sum += means[i];
      line.mean_of_run = sum / static_cast<double>(run);
      line.run_fails = !reaches(*line.mean_of_run, specified);
    }
    line.single_fails = !reaches(of.mean, judged.least_single);
    judged.accepted = judged.accepted && !line.run_fails && !line.single_fails;
    judged.tests.push_back(std::move(line));
  }
  const auto over_all = std::get<BreakStatistics>(break_statistics(means));
  judged.mean = over_all.mean;
  judged.deviation = over_all.deviation;
  judged.within_test = within_test(tests, limits);
  return judged;
}

std::variant<std::vector<SeasonTest>, std::vector<Diagnostic>> read_season(const std::string& file,
                                                                           std::string_view text) {
  auto read = read_csv(file, text);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return std::move(*faults);
  const CsvTable& table = std::get<CsvTable>(read);
  std::vector<Diagnostic> faults;
  constexpr const char* form = "write the header: test,result 1 [psi],result 2 [psi]";
  if (table.header.front().name != "test" || table.header.size() < 2)
    return std::vector{Diagnostic{file, table.header.front().place, "the header does not begin with 'test'", form}};
  for (std::size_t i = 1; i < table.header.size(); ++i)
    if (!unit_named<Stress>(table.header[i].unit))
      faults.push_back({file, table.header[i].place,
                        fmt::format("the column '{}' does not say its unit", table.header[i].name), form});
  if (!faults.empty()) return faults;
  std::vector<SeasonTest> tests;
  for (const auto& row : table.rows) {
    SeasonTest test{.name = row.front().text, .results = {}, .place = row.front().place};
    for (std::size_t i = 1; i < row.size(); ++i) {
      if (row[i].text.empty()) continue;
      const auto number = number_in(row[i]);
      const auto result = number && *number > 0.0 ? quantity_in<Stress>(*number, table.header[i].unit) : std::nullopt;
      if (result) test.results.push_back(*result);
      else faults.push_back({file, row[i].place, fmt::format("'{}' is no strength above zero", row[i].text), {}});
    }
    if (test.results.empty() && faults.empty())
      faults.push_back({file, test.place, fmt::format("test '{}' has no result", test.name), {}});
    if (faults.size() >= most_faults) break;
    tests.push_back(std::move(test));
  }
  if (!faults.empty()) return faults;
  return tests;
}

}  // namespace firstpick::strength
