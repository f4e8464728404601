#include "strength/maturity_estimate.hpp"

#include "support/assessed.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

Temperature degC(double number) { return Temperature::from_value(number + 273.15); }

plan::Timestamp at_hour(double hours) {
  return {1772487000 + static_cast<long long>(hours * 3600.0), true, std::to_string(hours) + " h"};
}

plan::Calibration calibration() {
  plan::Calibration of;
  of.mix = "made";
  of.function = plan::MaturityFunction::nurse_saul;
  of.curve = plan::StrengthCurve::exponential;
  of.datum = degC(0);
  of.cured_at = degC(20);
  of.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 6.0 * inch, 12.0 * inch};
  return of;
}

// Without scatter: S = 40 exp(-(1 d / t)^0.7).
std::vector<strength::AgedStrength> aged() {
  std::vector<strength::AgedStrength> data;
  for (const double t_d : {0.4, 0.7, 1.0, 2.0, 3.0, 7.0})
    data.push_back({t_d * day, 40.0 * std::exp(-std::pow(1.0 / t_d, 0.7)) * MPa});
  return data;
}

strength::FittedCalibration fitted() {
  Trace trace;
  return assessed(strength::fitted_calibration(calibration(), aged(), us_tables(), trace));
}

// A reading every half hour, `hours` long, rising by a thousandth of a degree so that no sensor looks dead.
strength::TemperatureLog constant_log(double T_degC, double hours) {
  strength::TemperatureLog log{.file = "log.csv", .sensor = "made", .readings = {}, .doubts = {}};
  for (int i = 0; i <= static_cast<int>(2.0 * hours); ++i)
    log.readings.push_back({at_hour(i / 2.0), degC(T_degC + 0.001 * i), {}, true});
  return log;
}

Outcome<strength::MaturityEstimate> estimate(const strength::TemperatureLog& log, double hours) {
  Trace trace;
  return strength::maturity_estimate(fitted(), log, at_hour(0), at_hour(hours).seconds, us_tables(), trace);
}

plan::Companion companion(double tested_h, double result_MPa) {
  plan::Companion of;
  of.tested = at_hour(tested_h);
  of.results = {result_MPa * MPa, result_MPa * MPa};
  of.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 6.0 * inch, 12.0 * inch};
  of.cure = plan::Cure::field;
  return of;
}

tables::RuleSet rules_that_take_maturity() {
  tables::RuleSet rules = us_rules();
  rules.maturity.value = tables::MaturityUse::validated_with_margin;
  return rules;
}

Outcome<Stress> credited(const strength::TemperatureLog& log, const std::vector<plan::Companion>& companions) {
  std::vector<Outcome<strength::CompanionCheck>> checks;
  for (const plan::Companion& each : companions)
    checks.push_back(
        strength::companion_check(each, fitted(), log, at_hour(0), rules_that_take_maturity(), us_tables()));
  Trace trace;
  return strength::creditable_strength(estimate(log, 24), log, checks, rules_that_take_maturity(), us_tables(), trace);
}

const double at_one_day_MPa = 40.0 * std::exp(-1.0);

}  // namespace

TEST_CASE("the fit finds the curve that made the data") {
  const auto found = fitted();
  CHECK(found.fit.parameters[0] == Approx(40.0).epsilon(1e-6));
  CHECK(found.fit.parameters[1] == Approx(1.0).epsilon(1e-6));
  CHECK(found.fit.parameters[2] == Approx(0.7).epsilon(1e-6));
}

TEST_CASE("a day at the temperature of the specimens gives their strength of one day") {
  const auto found = assessed(estimate(constant_log(20, 24), 24));
  CHECK(in(hour, found.equivalent_age) == Approx(24.0).epsilon(0.002));
  CHECK(in(MPa, found.strength) == Approx(at_one_day_MPa).epsilon(0.002));
  CHECK(found.temperature_time_degC_h.value() == Approx(480.0).epsilon(0.002));
}

TEST_CASE("nothing counts past the last reading") {
  const auto log = constant_log(20, 24);
  CHECK(assessed(estimate(log, 24)).equivalent_age == assessed(estimate(log, 2400)).equivalent_age);
}

TEST_CASE("below the youngest specimen there is no estimate, above the oldest it is that of the oldest") {
  CHECK(why_not(estimate(constant_log(20, 9), 9)).find("is below that of the youngest specimen") != std::string::npos);
  const auto old = assessed(estimate(constant_log(60, 100), 100));
  CHECK(old.at_oldest);
  CHECK(in(MPa, old.strength) == Approx(in(MPa, aged().back().strength)));
}

TEST_CASE("a pour without its zone, or none, gives no estimate") {
  Trace trace;
  const auto log = constant_log(20, 24);
  const auto with = [&](const std::optional<plan::Timestamp>& cast) {
    return strength::maturity_estimate(fitted(), log, cast, at_hour(24).seconds, us_tables(), trace);
  };
  CHECK(why_not(with({})) == "when the concrete of the log was placed is not stated");
  CHECK(why_not(with(plan::Timestamp{1772487000, false, "2026-03-02 16:30"})) ==
        "the time of the pour has no zone, and the log has one");
  CHECK(why_not(with(at_hour(25))) == "the log ends 24.000000 h, before the pour 25.000000 h");
}

TEST_CASE("validated by companions, the estimate counts less its margin") {
  const auto log = constant_log(20, 24);
  const Stress counted = assessed(credited(log, {companion(24, at_one_day_MPa)}));
  CHECK(in(psi, counted) == Approx(in(psi, assessed(estimate(log, 24)).strength) - 500.0));
}

TEST_CASE("without valid companions it counts for nothing") {
  const auto log = constant_log(20, 24);
  CHECK(why_not(credited(log, {})) == "no companion specimens of this pour validate the calibration");
  plan::Companion standard = companion(24, at_one_day_MPa);
  standard.cure = plan::Cure::standard;
  CHECK(why_not(credited(log, {standard})) ==
        "standard-cured companions do not validate: they did not cure with the piece");
  plan::Companion one = companion(24, at_one_day_MPa);
  one.results.pop_back();
  CHECK(why_not(credited(log, {one})) == "1 of the 2 companion results that the rule set asks for");
  CHECK(why_not(credited(log, {companion(25, at_one_day_MPa)})) ==
        "the companions were broken 25.000000 h, after the last reading");
}

TEST_CASE("companions at the limit of the difference validate, past it they do not, either way") {
  const auto log = constant_log(20, 24);
  const double estimated_MPa = in(MPa, assessed(estimate(log, 24)).strength);
  CHECK(is_assessed(credited(log, {companion(24, estimated_MPa / 1.0999)})));
  CHECK(is_assessed(credited(log, {companion(24, estimated_MPa / 0.9001)})));
  CHECK_FALSE(is_assessed(credited(log, {companion(24, estimated_MPa / 1.1001)})));
  CHECK_FALSE(is_assessed(credited(log, {companion(24, estimated_MPa / 0.8999)})));
  CHECK_FALSE(is_assessed(credited(log, {companion(24, estimated_MPa), companion(24, estimated_MPa / 2.0)})));
}

TEST_CASE("a log in doubt, frozen or too hot concrete count for nothing") {
  auto doubtful = constant_log(20, 24);
  doubtful.doubts.push_back({"log.csv", {5, 1}, "a gap", {}});
  CHECK(why_not(credited(doubtful, {companion(24, at_one_day_MPa)})) == "the temperature log is in doubt: a gap");
  auto frozen = constant_log(20, 24);
  frozen.readings[3].temperature = degC(0.0);
  CHECK(why_not(credited(frozen, {companion(24, at_one_day_MPa)})) == "the concrete was at or below 0 degC");
  auto hot = constant_log(20, 24);
  hot.readings[3].temperature = degC(60.01);
  CHECK(why_not(credited(hot, {companion(24, at_one_day_MPa)})) == "the concrete was hotter than 60 degC");
  hot.readings[3].temperature = us_tables().maturity->peak.value;
  CHECK(is_assessed(credited(hot, {companion(24, at_one_day_MPa)})));
}

TEST_CASE("a calibration that no concrete can have is refused, not repaired") {
  Trace trace;
  auto falling = aged();
  for (std::size_t i = 0; i < falling.size(); ++i) falling[i].strength = (30.0 - static_cast<double>(i)) * MPa;
  plan::Calibration logarithmic = calibration();
  logarithmic.curve = plan::StrengthCurve::logarithmic;
  CHECK(why_not(strength::fitted_calibration(logarithmic, falling, us_tables(), trace))
            .find("the fitted strength falls with age") != std::string::npos);
  auto few = aged();
  few.resize(3);
  CHECK(why_not(strength::fitted_calibration(calibration(), few, us_tables(), trace)) ==
        "the calibration cannot be fitted: 3 ages, and this curve needs 4");
  plan::Calibration without_datum = calibration();
  without_datum.datum.reset();
  CHECK(why_not(strength::fitted_calibration(without_datum, aged(), us_tables(), trace)) ==
        "the datum temperature of the calibration is not stated");
  plan::Calibration warm_datum = calibration();
  warm_datum.datum = degC(20);
  CHECK(why_not(strength::fitted_calibration(warm_datum, aged(), us_tables(), trace)) ==
        "the datum temperature is not below the reference temperature");
  plan::Calibration arrhenius = calibration();
  arrhenius.function = plan::MaturityFunction::arrhenius;
  CHECK(why_not(strength::fitted_calibration(arrhenius, aged(), us_tables(), trace)) ==
        "the activation temperature of the calibration is not stated");
}
