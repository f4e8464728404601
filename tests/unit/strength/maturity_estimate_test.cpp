#include "strength/maturity_estimate.hpp"

#include <limits>

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
    log.readings.push_back({at_hour(i / 2.0), degC(T_degC + 0.001 * i), {static_cast<std::size_t>(i) + 1, 1}, true});
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
        strength::companion_check(each, fitted(), log, at_hour(0), at_hour(30).seconds, rules_that_take_maturity(),
                                  us_tables()));
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
  CHECK(why_not(credited(doubtful, {companion(24, at_one_day_MPa)})) == "the temperature log is in doubt, log.csv:5: a gap");
  auto frozen = constant_log(20, 24);
  frozen.readings[3].temperature = degC(0.0);
  CHECK(why_not(credited(frozen, {companion(24, at_one_day_MPa)})) == "the concrete was at or below 0 degC, log.csv:4");
  auto hot = constant_log(20, 24);
  hot.readings[3].temperature = degC(60.01);
  CHECK(why_not(credited(hot, {companion(24, at_one_day_MPa)})) == "the concrete was hotter than 60 degC, log.csv:4");
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

TEST_CASE("companions that lie too far apart, were too young, or are not broken yet do not validate") {
  const auto log = constant_log(20, 24);
  plan::Companion wild = companion(24, at_one_day_MPa);
  wild.results = {0.9 * at_one_day_MPa * MPa, 1.1 * at_one_day_MPa * MPa};  // 20 % apart, 8 % for two cylinders 6x12 in
  CHECK(why_not(credited(log, {wild})) == "the companions of 24.000000 h lie 20.0 % of their mean apart, more than 8.00 %");
  plan::Companion cube = wild;  // of which no limit is known: the rule set's
  cube.specimen = plan::Specimen{plan::SpecimenShape::cube, 150.0 * mm, 150.0 * mm};
  cube.results = {0.8 * at_one_day_MPa * MPa, 1.2 * at_one_day_MPa * MPa};
  CHECK_THAT(why_not(credited(log, {cube})), Catch::Contains("lie 40.0 % of their mean apart, more than 30.0 %"));
  CHECK_THAT(why_not(credited(log, {companion(3.9, 1.0)})), Catch::Contains("below that of the youngest specimen"));
  const auto warm = constant_log(55, 24);
  const auto early = strength::companion_check(companion(3.9, 15.0), fitted(), warm, at_hour(0), at_hour(30).seconds,
                                               rules_that_take_maturity(), us_tables());
  CHECK(why_not(early) == "the companions of 3.900000 h were younger than 4 h");
  const auto later = strength::companion_check(companion(24, at_one_day_MPa), fitted(), log, at_hour(0),
                                               at_hour(23.5).seconds, rules_that_take_maturity(), us_tables());
  CHECK(why_not(later) == "the companions of 24.000000 h are after the time of the question");
}

TEST_CASE("the latest companions validate while they are near enough to the estimate, in strength and in time") {
  const auto log = constant_log(20, 24);
  const auto strength_at = [&](double hours) { return in(MPa, assessed(estimate(log, hours)).strength); };
  const auto at = [&](double hours) { return companion(hours, strength_at(hours)); };
  CHECK(is_assessed(credited(log, {at(12.0)})));
  CHECK(why_not(credited(log, {at(11.5)})) ==
        "the latest companions were broken 12 h 30 min before the last reading, more than 12 h");
  CHECK(is_assessed(credited(log, {at(10.0), at(20.0)})));  // earlier ones beside them do no harm

  tables::RuleSet strict = rules_that_take_maturity();
  strict.companion_share.value = Ratio::from_value(0.75);
  std::vector<Outcome<strength::CompanionCheck>> checks{strength::companion_check(
      at(14.0), fitted(), log, at_hour(0), at_hour(30).seconds, strict, us_tables())};
  Trace trace;
  CHECK_THAT(why_not(strength::creditable_strength(estimate(log, 24), log, checks, strict, us_tables(), trace)),
             Catch::Contains("the latest companions have") && Catch::Contains("below 75 % they do not validate it"));
}

TEST_CASE("a calibration that scatters, or an estimate with a large error by its fit, counts for nothing") {
  const auto log = constant_log(20, 24);
  const std::vector<Outcome<strength::CompanionCheck>> checks{
      strength::companion_check(companion(24, at_one_day_MPa), fitted(), log, at_hour(0), at_hour(30).seconds,
                                rules_that_take_maturity(), us_tables())};
  const auto with = [&](double scatter, double error) {
    auto estimated = assessed(estimate(log, 24));
    estimated.scatter = scatter * estimated.strength;
    estimated.standard_error = error * estimated.strength;
    Trace trace;
    return strength::creditable_strength(estimated, log, checks, rules_that_take_maturity(), us_tables(), trace);
  };
  CHECK(is_assessed(with(0.0999, 0.0999)));
  CHECK_THAT(why_not(with(0.1001, 0.0)), Catch::Contains("the standard deviation of the calibration is 10."));
  CHECK_THAT(why_not(with(0.0, 0.1001)), Catch::Contains("the standard error of the estimate is 10."));
  CHECK_FALSE(is_assessed(with(0.0, std::numeric_limits<double>::infinity())));
  CHECK_FALSE(is_assessed(with(std::numeric_limits<double>::quiet_NaN(), 0.0)));
}

TEST_CASE("another sensor that was colder, or has no time that counts, stands against the named one") {
  auto log = constant_log(20, 24);
  log.beside.push_back(constant_log(19.01, 24));
  log.beside.back().sensor = "core";
  CHECK(is_assessed(credited(log, {companion(24, at_one_day_MPa)})));
  log.beside.back() = constant_log(18.9, 24);
  log.beside.back().sensor = "core";
  CHECK_THAT(why_not(credited(log, {companion(24, at_one_day_MPa)})),
             Catch::StartsWith("the sensor 'core' was colder than 'made': 18.9"));
  log.beside.back().readings.resize(1);
  CHECK(why_not(credited(log, {companion(24, at_one_day_MPa)})) ==
        "the sensor 'core' beside 'made' has no time that counts");
}

TEST_CASE("curing temperatures and activation energies that no calibration has are refused") {
  Trace trace;
  const auto with = [&](double cured_degC) {
    plan::Calibration of = calibration();
    of.cured_at = degC(cured_degC);
    return strength::fitted_calibration(of, aged(), us_tables(), trace);
  };
  CHECK(is_assessed(with(5.0)));
  CHECK(is_assessed(with(60.0)));
  CHECK(why_not(with(4.9)) == "cured_at is 4.9 degC, outside 5 degC to 60 degC: no specimens of a calibration cure there");
  for (const double wrong : {-273.15, -9.0, 60.1, 95.0, 500.0}) CHECK_FALSE(is_assessed(with(wrong)));

  const auto by = [&](double Q_K) {
    plan::Calibration of = calibration();
    of.function = plan::MaturityFunction::arrhenius;
    of.activation_temperature = Temperature::from_value(Q_K);
    return strength::fitted_calibration(of, aged(), us_tables(), trace);
  };
  CHECK(is_assessed(by(2500.0)));
  CHECK(is_assessed(by(8000.0)));
  CHECK(why_not(by(50000.0)) == "the activation temperature 50000 K is outside 2500 to 8000 K");
  CHECK_FALSE(is_assessed(by(2499.0)));
  CHECK_FALSE(is_assessed(by(8001.0)));
}
