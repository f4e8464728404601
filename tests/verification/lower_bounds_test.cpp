// EN 1990 annex D, table D1 (quoted): k_n of the 5 % characteristic value. The formulas behind our factors give
// them to the rounding of that table, at most 0.02. One-sided tolerance factors: n = 40, p 0.90, gamma 0.99 and
// the bound of mean 10, s 0.2, from a help page of statistics; the NIST handbook 7.2.6.3 prints 1.8752 for n = 43,
// by an approximation. The table of tolerance factors and the demold set are computed with arbitrary precision.
//
// Outside  strength-evidence

#include "strength/counted_strength.hpp"
#include "strength/lower_bound.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_rules.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

double known(std::size_t n) { return assessed(strength::fractile_factor_known(n, Ratio::from_value(0.05))); }
double unknown(std::size_t n) { return assessed(strength::fractile_factor_unknown(n, Ratio::from_value(0.05))); }
double tolerance(std::size_t n, double above, double gamma) {
  return assessed(strength::tolerance_factor(n, Ratio::from_value(1.0 - above), Ratio::from_value(gamma)));
}

double bound_MPa(tables::UsableStrength choice, double p = 0.05, double gamma = 0.75) {
  plan::Evidence evidence;
  evidence.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 4.0 * inch, 8.0 * inch};
  evidence.results = {21.0 * MPa, 22.4 * MPa, 20.3 * MPa};
  tables::RuleSet rules = hand_made_rules();
  rules.usable_strength.value = choice;
  rules.fractile.value = Ratio::from_value(p);
  rules.tolerance_confidence.value = Ratio::from_value(gamma);
  Trace trace;
  return in(MPa, assessed(strength::counted_strength(evidence, rules, us_tables(), trace)).value);
}

}  // namespace

TEST_CASE("EN 1990 table D1: V known") {
  const std::vector<std::pair<std::size_t, double>> rows = {{1, 2.31}, {2, 2.01}, {3, 1.89},  {4, 1.83},  {5, 1.80},
                                                            {6, 1.77}, {8, 1.74}, {10, 1.72}, {20, 1.68}, {30, 1.67}};
  for (const auto& [n, k_n] : rows) {
    CAPTURE(n);
    CHECK(known(n) == Approx(k_n).margin(0.02));
  }
}

TEST_CASE("EN 1990 table D1: V unknown") {
  const std::vector<std::pair<std::size_t, double>> rows = {{3, 3.37}, {4, 2.63},  {5, 2.33},  {6, 2.18},
                                                            {8, 2.00}, {10, 1.92}, {20, 1.76}, {30, 1.73}};
  for (const auto& [n, k_n] : rows) {
    CAPTURE(n);
    CHECK(unknown(n) == Approx(k_n).margin(0.02));
  }
  CHECK_FALSE(is_assessed(strength::fractile_factor_unknown(2, Ratio::from_value(0.05))));
}

TEST_CASE("EN 1990 table D1: n without end, V known or not, 1.64, by the formula 1.645") {
  const std::size_t without_end = 100000000;
  CHECK(known(without_end) == Approx(1.64).margin(0.0055));
  CHECK(unknown(without_end) == Approx(1.64).margin(0.0055));
  CHECK(known(without_end) == Approx(1.645).margin(0.0005));
  CHECK(unknown(without_end) == Approx(1.645).margin(0.0005));
}

TEST_CASE("EN 1990: the formulas behind table D1, computed") {
  CHECK(known(1) == Approx(2.326).margin(0.0005));
  CHECK(known(3) == Approx(1.899).margin(0.0005));
  CHECK(known(30) == Approx(1.672).margin(0.0005));
  CHECK(unknown(3) == Approx(3.372).margin(0.0005));
  CHECK(unknown(5) == Approx(2.335).margin(0.0005));
  CHECK(unknown(20) == Approx(1.772).margin(0.0005));
}

TEST_CASE("one-sided tolerance factor of a help page: n = 40, p 0.90, gamma 0.99, mean 10, s 0.2") {
  const double k = tolerance(40, 0.90, 0.99);
  CHECK(k == Approx(1.9017).margin(0.00005));
  CHECK(k == Approx(1.9034).margin(0.00175));  // Natrella's approximation, printed beside it
  CHECK(10.0 - 0.2 * k == Approx(9.6197).margin(0.00005));
}

TEST_CASE("NIST handbook 7.2.6.3: n = 43, 1.8752 by an approximation, 1.8740 exactly") {
  const double k = tolerance(43, 0.90, 0.99);
  CHECK(k == Approx(1.8752).margin(0.0015));
  CHECK(k == Approx(1.8740).margin(0.00005));
}

TEST_CASE("tolerance factors, computed with arbitrary precision") {
  struct Row {
    std::size_t n;
    double p95_75, p95_90, p95_95, p90_75, p90_90, p90_95;
  };
  const std::vector<Row> rows = {{2, 5.122, 13.090, 26.260, 3.992, 10.253, 20.581},
                                 {3, 3.152, 5.311, 7.656, 2.501, 4.258, 6.155},
                                 {4, 2.681, 3.957, 5.144, 2.134, 3.188, 4.162},
                                 {5, 2.463, 3.400, 4.203, 1.962, 2.742, 3.407},
                                 {6, 2.336, 3.092, 3.708, 1.859, 2.494, 3.006},
                                 {8, 2.188, 2.754, 3.187, 1.740, 2.219, 2.582},
                                 {10, 2.104, 2.568, 2.911, 1.671, 2.066, 2.355},
                                 {15, 1.991, 2.329, 2.566, 1.577, 1.867, 2.068},
                                 {20, 1.932, 2.208, 2.396, 1.528, 1.765, 1.926},
                                 {30, 1.869, 2.080, 2.220, 1.475, 1.657, 1.777},
                                 {50, 1.811, 1.965, 2.065, 1.425, 1.559, 1.646}};
  for (const Row& row : rows) {
    CAPTURE(row.n);
    CHECK(tolerance(row.n, 0.95, 0.75) == Approx(row.p95_75).margin(0.00051));
    CHECK(tolerance(row.n, 0.95, 0.90) == Approx(row.p95_90).margin(0.00051));
    CHECK(tolerance(row.n, 0.95, 0.95) == Approx(row.p95_95).margin(0.00051));
    CHECK(tolerance(row.n, 0.90, 0.75) == Approx(row.p90_75).margin(0.00051));
    CHECK(tolerance(row.n, 0.90, 0.90) == Approx(row.p90_90).margin(0.00051));
    CHECK(tolerance(row.n, 0.90, 0.95) == Approx(row.p90_95).margin(0.00051));
  }
}

// The two fractiles were computed with the printed k_n of table D1, whose rounding is 0.005 (V unknown, times
// s = 1.07 MPa) and 0.009 off its own formula (V known, times V m = 2.12 MPa): that is their tolerance.
TEST_CASE("demold set 21.0, 22.4, 20.3 MPa, computed") {
  using tables::UsableStrength;
  CHECK(bound_MPa(UsableStrength::lowest) == Approx(20.3).margin(1e-9));
  CHECK(bound_MPa(UsableStrength::fractile_variation_unknown) == Approx(17.630).margin(0.0055));
  CHECK(bound_MPa(UsableStrength::fractile_variation_known) == Approx(17.220).margin(0.02));
  CHECK(bound_MPa(UsableStrength::tolerance_bound) == Approx(17.863).margin(0.0005));
  CHECK(bound_MPa(UsableStrength::tolerance_bound, 0.10) == Approx(18.559).margin(0.0005));
  CHECK(bound_MPa(UsableStrength::tolerance_bound, 0.05, 0.95) == Approx(13.047).margin(0.0005));
  CHECK(bound_MPa(UsableStrength::mean) == Approx(21.2333).margin(0.00005));
}
