// What cutting an interval of a log in two changes.
//
// An interval counts at the mean of the readings at its ends. So "cut in two, nothing changes" is a law of intervals, not
// of readings: two halves that keep the mean of the whole add up to it. A reading in between, on the straight line between
// its neighbours, splits the mean; for a straight rate (Nurse-Saul on one side of its datum) that changes nothing either.
// A rate that curves upward with temperature gives no lower age by it: the means are on the safe side. Looked for the
// rule that breaks it: that of Freiesleben Hansen and Pedersen curves downward by a hair between 15.5 and 20 degC.
// How far, for readings up to 3 K apart: up by less than a thousandth of the age, down (there) by less than 0.0001 of it.

#include <algorithm>
#include <random>

#include "strength/maturity.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::MaturityFunction;

namespace {

constexpr int logs = 200;
constexpr double rounding = 1e-12;

Temperature degC(double number) { return Temperature::from_value(number + 273.15); }

strength::MaturityLaw law_of(MaturityFunction function) {
  return {.function = function, .reference = degC(20), .datum = degC(-5),
          .activation_temperature = Temperature::from_value(4500.0), .constants = *us_tables().maturity};
}

const std::vector<MaturityFunction> all_functions = {MaturityFunction::nurse_saul, MaturityFunction::arrhenius,
                                                     MaturityFunction::freiesleben_hansen_pedersen,
                                                     MaturityFunction::en_1992_1_1};

// Readings every half hour for a day, at most 3 K from one to the next.
strength::TemperatureLog random_log(std::mt19937_64& random, double coldest_degC) {
  std::uniform_real_distribution<double> start(coldest_degC, 30.0), step(-2.0, 3.0);
  strength::TemperatureLog log{.file = "log.csv", .sensor = "made", .readings = {}, .doubts = {}};
  double T = start(random);
  for (long long i = 0; i < 48; ++i) {
    log.readings.push_back({plan::Timestamp{1800 * i, true, "reading"}, degC(T), {}, true});
    T = std::clamp(T + step(random), coldest_degC, 90.0);
  }
  return log;
}

// A reading more in every interval, at a random second of it, on the straight line.
strength::TemperatureLog with_readings_between(const strength::TemperatureLog& log, std::mt19937_64& random) {
  std::uniform_int_distribution<long long> within(1, 1799);
  strength::TemperatureLog denser = log;
  denser.readings.resize(1);
  for (std::size_t i = 1; i < log.readings.size(); ++i) {
    const auto &a = log.readings[i - 1], &b = log.readings[i];
    strength::Reading between = a;
    const long long after_s = within(random);
    between.at.seconds += after_s;
    between.temperature = Temperature::from_value(
        a.temperature.value() + static_cast<double>(after_s) / 1800.0 * (b.temperature.value() - a.temperature.value()));
    denser.readings.push_back(between);
    denser.readings.push_back(b);
  }
  return denser;
}

double age_h(const strength::MaturityLaw& law, const strength::TemperatureLog& log) {
  return in(hour, strength::equivalent_age(
                      law, strength::curing_intervals(log, log.readings.front().at, log.readings.back().at.seconds)));
}

}  // namespace

TEST_CASE("an interval cut in two at its mean counts the same, whatever the function") {
  std::mt19937_64 random(20260303);
  std::uniform_real_distribution<double> share(0.01, 0.99);
  for (int i = 0; i < logs; ++i) {
    const auto log = random_log(random, -25.0);
    const auto whole = strength::curing_intervals(log, log.readings.front().at, log.readings.back().at.seconds);
    std::vector<strength::CuringInterval> halves;
    for (const auto& each : whole) {
      const double first = share(random);
      halves.push_back({first * each.length, each.mean});
      halves.push_back({(1.0 - first) * each.length, each.mean});
    }
    for (const MaturityFunction function : all_functions) {
      const auto law = law_of(function);
      CAPTURE(i, static_cast<int>(function));
      CHECK(in(hour, strength::equivalent_age(law, halves)) ==
            Approx(in(hour, strength::equivalent_age(law, whole))).epsilon(rounding).margin(rounding));
    }
  }
}

TEST_CASE("by Nurse and Saul, above the datum, a reading on the straight line changes nothing") {
  std::mt19937_64 random(20260304);
  const auto law = law_of(MaturityFunction::nurse_saul);
  for (int i = 0; i < logs; ++i) {
    const auto log = random_log(random, -5.0);  // not below the datum
    CAPTURE(i);
    CHECK(age_h(law, with_readings_between(log, random)) == Approx(age_h(law, log)).epsilon(rounding));
  }
}

TEST_CASE("a reading on the straight line lowers no age, by one function a hair, and raises it by less than a thousandth") {
  std::mt19937_64 random(20260305);
  for (int i = 0; i < logs; ++i) {
    const auto log = random_log(random, 0.0);
    const auto denser = with_readings_between(log, random);
    for (const MaturityFunction function : all_functions) {
      const auto law = law_of(function);
      const double before = age_h(law, log), after = age_h(law, denser);
      CAPTURE(i, static_cast<int>(function), before, after);
      const bool curves_downward = function == MaturityFunction::freiesleben_hansen_pedersen;
      CHECK(after >= before * (1.0 - (curves_downward ? 1e-4 : rounding)));
      CHECK(after <= before * (1.0 + 1e-3));
    }
  }
}

TEST_CASE("across the datum too a reading on the straight line never lowers the age") {
  std::mt19937_64 random(20260306);
  const auto law = law_of(MaturityFunction::nurse_saul);
  int raised = 0;
  for (int i = 0; i < logs; ++i) {
    const auto log = random_log(random, -15.0);
    const double before = age_h(law, log), after = age_h(law, with_readings_between(log, random));
    CHECK(after >= before * (1.0 - rounding));
    raised += after > before * (1.0 + rounding) ? 1 : 0;
  }
  CHECK(raised > 10);  // some logs cross it
}
