// Maturity functions. Temperature-adjusted age, EN 1992-1-1 (B.10): a unit test of the open library structuralcodes of
// the fib, which cites the equation, prints 8.37986781 d; lists of different lengths raise an error there, and here a length
// and its temperature are one thing (CuringInterval), and a row of a log with a cell too few is refused. Rates at constant temperature and the heat-cured log W (0 to 24 h) and freezing
// log F are computed tables: arithmetic on the equations, mean temperature per interval. A textbook example after
// Plowman (from memory; its arithmetic recomputed). Tolerance: half a unit of the last printed digit.
//
// Outside  tables/maturity.toml
// Computed src/strength

#include "strength/maturity.hpp"
#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::MaturityFunction;

namespace {

Temperature degC(double number) { return Temperature::from_value(number + 273.15); }

strength::MaturityLaw law(MaturityFunction function, double datum_degC = 0.0, double reference_degC = 20.0) {
  return {.function = function,
          .reference = degC(reference_degC),
          .datum = degC(datum_degC),
          .activation_temperature = Temperature::from_value(5000.0),
          .constants = *us_tables().maturity};
}

// Readings at `step_h`, each interval at the mean of both ends.
std::vector<strength::CuringInterval> intervals(const std::vector<double>& readings_degC, double step_h,
                                                std::size_t count) {
  std::vector<strength::CuringInterval> all;
  for (std::size_t i = 0; i < count; ++i)
    all.push_back({step_h * hour, degC((readings_degC[i] + readings_degC[i + 1]) / 2.0)});
  return all;
}

const std::vector<double> log_W = {20, 22, 26, 33, 41, 48, 52, 53, 51, 47, 43, 39, 35};
const std::vector<double> log_F = {10, 4, 0, -4, -14};

}  // namespace

TEST_CASE("(B.10), open library: 19, 20, 20, 21, 22, 23 degC for 1, 2, 1, 1, 1, 2 d") {
  const std::vector<double> T = {19, 20, 20, 21, 22, 23}, d = {1, 2, 1, 1, 1, 2};
  std::vector<strength::CuringInterval> all;
  for (std::size_t i = 0; i < T.size(); ++i) all.push_back({d[i] * day, degC(T[i])});
  const Duration age = strength::equivalent_age(strength::en_1992_1_1_law(*us_tables().maturity), all);
  CHECK(in(day, age) == Approx(8.37986781).margin(5e-9));
}

TEST_CASE("rates at constant temperature, relative to 20 degC, computed") {
  struct Row {
    double T, FHP, Q5000, EN, NS_minus_10, NS_0;
  };
  for (const Row& row : {Row{0, .1511, .2868, .3671, .3333, 0}, Row{5, .2925, .3986, .4778, .5, .25},
                         Row{10, .4974, .5475, .6161, .6667, .5}, Row{15, .7476, .7438, .7875, .8333, .75},
                         Row{20, 1, 1, .9981, 1, 1}, Row{23, 1.1494, 1.1886, 1.1462, 1.1, 1.15},
                         Row{30, 1.5737, 1.7553, 1.5662, 1.3333, 1.5}, Row{40, 2.4057, 2.9723, 2.3880, 1.6667, 2},
                         Row{50, 3.5824, 4.8716, 3.5470, 2, 2.5}, Row{60, 5.2086, 7.7513, 5.1448, 2.3333, 3}}) {
    const Temperature T = degC(row.T);
    CAPTURE(row.T);
    CHECK(rate(law(MaturityFunction::freiesleben_hansen_pedersen), T).value() == Approx(row.FHP).margin(0.00005));
    CHECK(rate(law(MaturityFunction::arrhenius), T).value() == Approx(row.Q5000).margin(0.00005));
    CHECK(rate(law(MaturityFunction::en_1992_1_1), T).value() == Approx(row.EN).margin(0.00005));
    CHECK(rate(law(MaturityFunction::nurse_saul, -10), T).value() == Approx(row.NS_minus_10).margin(0.00005));
    CHECK(rate(law(MaturityFunction::nurse_saul, 0), T).value() == Approx(row.NS_0).margin(0.00005));
  }
}

TEST_CASE("log W, heat-cured, computed") {
  struct Row {
    double M_0, M_minus_10, FHP, Q5000_20, Q5000_23, EN;
  };
  const std::vector<Row> rows = {
      {42, 62, 2.096, 2.119, 1.783, 2.091},       {90, 130, 4.502, 4.636, 3.900, 4.490},
      {149, 209, 7.581, 8.052, 6.774, 7.555},     {223, 303, 11.830, 13.146, 11.060, 11.776},
      {312, 412, 17.603, 20.599, 17.330, 17.500}, {412, 532, 24.768, 30.342, 25.528, 24.594},
      {517, 657, 32.652, 41.314, 34.759, 32.396}, {621, 781, 40.388, 52.030, 43.774, 40.051},
      {719, 899, 47.281, 61.317, 51.587, 46.878}, {809, 1009, 53.171, 68.957, 58.015, 52.717},
      {891, 1111, 58.184, 75.211, 63.277, 57.691}, {965, 1205, 62.432, 80.305, 67.563, 61.911}};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(2 * (i + 1));
    const auto until = intervals(log_W, 2.0, i + 1);
    const auto hours = [&](const strength::MaturityLaw& by) { return in(hour, strength::equivalent_age(by, until)); };
    CHECK(strength::temperature_time_degC_h(degC(0), until) == Approx(rows[i].M_0).margin(0.5));
    CHECK(strength::temperature_time_degC_h(degC(-10), until) == Approx(rows[i].M_minus_10).margin(0.5));
    CHECK(hours(law(MaturityFunction::freiesleben_hansen_pedersen)) == Approx(rows[i].FHP).margin(0.00051));
    CHECK(hours(law(MaturityFunction::arrhenius)) == Approx(rows[i].Q5000_20).margin(0.00051));
    CHECK(hours(law(MaturityFunction::arrhenius, 0, 23)) == Approx(rows[i].Q5000_23).margin(0.00051));
    CHECK(hours(law(MaturityFunction::en_1992_1_1)) == Approx(rows[i].EN).margin(0.00051));
  }
}

TEST_CASE("log F, freezing: the clamp keeps the temperature-time factor from falling, computed") {
  const std::vector<double> M_0 = {42, 54, 54, 54}, M_minus_10 = {102, 174, 222, 228};
  const std::vector<double> FHP = {2.204, 3.404, 4.074, 4.268};
  for (std::size_t i = 0; i < M_0.size(); ++i) {
    CAPTURE(6 * (i + 1));
    const auto until = intervals(log_F, 6.0, i + 1);
    CHECK(strength::temperature_time_degC_h(degC(0), until) == Approx(M_0[i]).margin(0.5));
    CHECK(strength::temperature_time_degC_h(degC(-10), until) == Approx(M_minus_10[i]).margin(0.5));
    CHECK(in(hour, strength::equivalent_age(law(MaturityFunction::freiesleben_hansen_pedersen), until)) ==
          Approx(FHP[i]).margin(0.00051));
  }
}

TEST_CASE("textbook after Plowman, from memory: datum -11 degC, 7 days of 12 h at 20 and 12 h at 10 degC") {
  std::vector<strength::CuringInterval> week;
  for (int i = 0; i < 7; ++i) {
    week.push_back({12.0 * hour, degC(20)});
    week.push_back({12.0 * hour, degC(10)});
  }
  const double M = strength::temperature_time_degC_h(degC(-11), week);
  CHECK(M == Approx(4368.0).margin(0.5));
  CHECK(32.0 + 54.0 * std::log10(M / 1000.0) == Approx(66.575).margin(0.0005));
  CHECK(strength::temperature_time_degC_h(degC(-11), {{28.0 * day, degC(18)}}) == Approx(19488.0).margin(0.5));
}
