// ACI E702 example (2007): 15 strength tests of two cylinders each, f'c = 3500 psi. The data were read; the
// source confirms the mean of test 1 (4210 psi). Means, runs and ranges are arithmetic on the printed results.
// Acceptance by ACI 318-14 26.12.3.1, quoted. Tolerance: half a unit of the last digit.
//
// Outside  tables/acceptance.toml
// Computed src/strength

#include "strength/acceptance.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::vector<strength::SeasonTest> season() {
  const std::vector<double> first_psi = {4100, 4320, 4310, 4420, 4200, 4250, 3880, 3570,
                                         3570, 3780, 3680, 3300, 3470, 2770, 3200};
  const std::vector<double> second_psi = {4320, 4190, 4310, 4380, 4160, 3810, 4040, 3680,
                                          3210, 3780, 2980, 3740, 3210, 2750, 3480};
  std::vector<strength::SeasonTest> tests;
  for (std::size_t i = 0; i < first_psi.size(); ++i)
    tests.push_back({std::to_string(i + 1), {first_psi[i] * psi, second_psi[i] * psi}, {}});
  return tests;
}

strength::Acceptance judged() {
  return assessed(strength::acceptance(season(), 3500.0 * psi, *us_tables().acceptance));
}

}  // namespace

TEST_CASE("E702: the mean of each test, of each run of three, and the range") {
  const strength::Acceptance found = judged();
  const std::vector<double> mean_psi = {4210, 4255, 4310, 4400, 4180, 4030, 3960, 3625,
                                        3390, 3780, 3330, 3520, 3340, 2760, 3340};
  const std::vector<double> run_psi = {4258.3, 4321.7, 4296.7, 4203.3, 4056.7, 3871.7, 3658.3,
                                       3598.3, 3500.0, 3543.3, 3396.7, 3206.7, 3146.7};
  const std::vector<double> range_percent = {5.2, 3.1, 0.0, 0.9, 1.0, 10.9, 4.0, 3.0, 10.6, 0.0, 21.0, 12.5, 7.8, 0.7, 8.4};
  REQUIRE(found.tests.size() == 15);
  for (std::size_t i = 0; i < 15; ++i) {
    CAPTURE(i + 1);
    CHECK(in(psi, found.tests[i].mean) == Approx(mean_psi[i]).margin(0.5));
    CHECK(100.0 * found.tests[i].relative_range.value() == Approx(range_percent[i]).margin(0.05001));
    REQUIRE(found.tests[i].mean_of_run.has_value() == (i >= 2));
    if (i >= 2) CHECK(in(psi, *found.tests[i].mean_of_run) == Approx(run_psi[i - 2]).margin(0.05));
  }
}

TEST_CASE("E702: runs that end with tests 13, 14 and 15 fail, and the run of exactly 3500.0 psi passes") {
  const strength::Acceptance found = judged();
  for (std::size_t i = 0; i < 15; ++i) {
    CAPTURE(i + 1);
    CHECK(found.tests[i].run_fails == (i + 1 >= 13));
    CHECK(found.tests[i].single_fails == (i + 1 == 14));
  }
  CHECK(in(psi, found.least_single) == Approx(3000.0).margin(0.5));
  CHECK_FALSE(found.accepted);
}

TEST_CASE("E702: the mean range is 213.33 psi, the variation within tests 5.03 %") {
  const strength::Acceptance found = judged();
  double ranges_psi = 0.0;
  for (const strength::JudgedTest& test : found.tests) ranges_psi += test.relative_range.value() * in(psi, test.mean);
  CHECK(ranges_psi / 15.0 == Approx(213.33).margin(0.005));
  CHECK(100.0 * in(psi, found.within_test.value()) / in(psi, found.mean) == Approx(5.03).margin(0.005));
}

TEST_CASE("E702: mean 3762.0 psi, s 478.07 psi, within-test s1 189.13 psi") {
  const strength::Acceptance found = judged();
  CHECK(in(psi, found.mean) == Approx(3762.0).margin(0.05));
  CHECK(in(psi, found.deviation.value()) == Approx(478.07).margin(0.005));
  CHECK(in(psi, found.within_test.value()) == Approx(189.13).margin(0.01));
}
