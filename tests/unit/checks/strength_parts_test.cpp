// The parts of a strength report where a time has no zone, a table is not there or a number is none.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/strength_parts.hpp"
#include "strength/maturity.hpp"
#include "strength/moment_text.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_evidence.hpp"
#include "support/hand_made_rules.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr long long pour_s = 1772487000;

Temperature degC(double number) { return Temperature::from_value(number + 273.15); }

plan::Timestamp at_hour(double hours) {
  return {pour_s + static_cast<long long>(hours * 3600.0), true, std::to_string(hours) + " h"};
}

StrengthReport about_specimens(const plan::Concrete& concrete,
                               const tables::Tables& tables = hand_made_tables()) {
  StrengthQuestion question;
  question.concrete = concrete;
  StrengthReport report;
  tell_specimens(question, tables, report);
  return report;
}

// A reading every hour from `first_h` to `last_h`.
strength::TemperatureLog log_of(double first_h, double last_h) {
  strength::TemperatureLog log{.file = "log.csv", .sensor = "made", .readings = {}, .doubts = {}};
  for (double hours = first_h; hours <= last_h; hours += 1.0)
    log.readings.push_back({at_hour(hours), degC(20.0 + 0.001 * hours), {}, true});
  return log;
}

StrengthQuestion about_log(double first_h = 0.0, double last_h = 24.0) {
  StrengthQuestion question;
  question.log = log_of(first_h, last_h);
  question.log_file = plan::TemperatureLogFile{};
  question.log_file->cast = at_hour(0.0);
  question.asked_at.zoned = at_hour(last_h);
  return question;
}

struct Told {
  StrengthReport report;
  Outcome<Stress> credit = NotAssessed{};
};
Told maturity(const StrengthQuestion& question, const tables::Tables& tables = us_tables()) {
  tables::RuleSet rules = us_rules();
  rules.maturity.value = tables::MaturityUse::validated_with_margin;
  Told told;
  told.credit = tell_maturity(question, rules, tables, told.report);
  return told;
}

// Without scatter: S = 40 exp(-(1 d / t)^0.7), cured at 20 degC.
void calibrate(StrengthQuestion& question) {
  plan::Calibration of;
  of.mix = "made";
  of.function = plan::MaturityFunction::nurse_saul;
  of.curve = plan::StrengthCurve::exponential;
  of.datum = degC(0.0);
  of.cured_at = degC(20.0);
  of.specimen = plan::Specimen{plan::SpecimenShape::cylinder, 6.0 * inch, 12.0 * inch};
  plan::Companion companion;
  companion.tested = at_hour(20.0);
  companion.results = {40.0 * std::exp(-std::pow(24.0 / 20.0, 0.7)) * MPa,
                       40.0 * std::exp(-std::pow(24.0 / 20.0, 0.7)) * MPa};
  companion.specimen = of.specimen;
  companion.cure = plan::Cure::field;
  of.companions = {companion};
  question.calibration = of;
  for (const double t_d : {0.4, 0.7, 1.0, 2.0, 3.0, 7.0})
    question.aged.push_back({t_d * day, 40.0 * std::exp(-std::pow(1.0 / t_d, 0.7)) * MPa});
}

// f/f_28 = t/(4 d + 0.85 t): two thirds of 30 MPa at 4/(1.5 - 0.85) = 6.154 d.
tables::Tables tables_that_grow() {
  tables::Tables tables = us_tables();
  tables.growth_curves.clear();
  tables::GrowthCurve curve{.key = "made"};
  curve.aci_a = made("a", Duration{4.0 * day});
  curve.aci_beta = made_ratio("beta", 0.85);
  tables.growth_curves.emplace("made", curve);
  return tables;
}

StrengthQuestion about_growth() {
  StrengthQuestion question;
  question.growth = plan::Growth{};
  question.growth->curve = "made";
  question.growth->strength_at_28_days = 30.0 * MPa;
  question.growth->temperature = degC(10.0);
  question.log_file = plan::TemperatureLogFile{};
  question.log_file->cast = at_hour(0.0);
  return question;
}

Prediction predicted(const StrengthQuestion& question, const tables::Tables& tables = tables_that_grow()) {
  StrengthReport report;
  StrengthNeeded needed;
  needed.what = "strip";
  needed.required = 20.0 * MPa;
  report.needed = {needed};
  tell_prediction(question, tables, report);
  REQUIRE(report.prediction);
  return *report.prediction;
}

}  // namespace

TEST_CASE("broken specimens: mean, range and age, as cylinders where the tables know the kind") {
  plan::Concrete concrete = concrete_with_evidence();
  const auto broken = about_specimens(concrete).broken;
  REQUIRE(broken);
  CHECK(in(psi, broken->of.mean) == Approx(2620.0));
  CHECK(broken->of.relative_range.value() == Approx(150.0 / 2620.0));
  CHECK(in(hour, broken->since_cast.value()) == Approx(14.0 + 40.0 / 60.0));
  REQUIRE(broken->as_cylinders.size() == 3);
  concrete.evidence->specimen = plan::Specimen{plan::SpecimenShape::cube, 150.0 * mm, 150.0 * mm};
  CHECK(in(psi, about_specimens(concrete).broken->as_cylinders.at(1)) == Approx(0.8 * 2550.0));
  concrete.evidence->specimen = plan::Specimen{plan::SpecimenShape::cube, 70.0 * mm, 70.0 * mm};
  const auto unknown = about_specimens(concrete).broken;
  REQUIRE(unknown);
  CHECK(unknown->as_cylinders.empty());
  CHECK(unknown->results.size() == 3);
}

TEST_CASE(
    "broken specimens: no age between a time with its zone and one without, none at all of no results") {
  plan::Concrete concrete = concrete_with_evidence();
  concrete.evidence->cast->has_offset = true;
  CHECK_FALSE(about_specimens(concrete).broken->since_cast);
  concrete.evidence->tested->has_offset = true;
  CHECK(about_specimens(concrete).broken->since_cast);
  concrete.evidence->tested.reset();
  CHECK_FALSE(about_specimens(concrete).broken->since_cast);
  for (const std::vector<Stress>& results :
       {std::vector<Stress>{}, {20.0 * MPa, 0.0 * MPa}, {20.0 * MPa, std::nan("") * MPa}}) {
    concrete.evidence->results = results;
    CHECK_FALSE(about_specimens(concrete).broken);
  }
}

TEST_CASE("maturity needs a log and constants, and a pour with its zone: else no credit, no points") {
  StrengthQuestion question = about_log();
  const Told whole = maturity(question);
  REQUIRE(whole.report.maturity);
  CHECK(whole.report.maturity->points.size() == 25);
  CHECK(in(hour, whole.report.maturity->points.back().since_cast) == Approx(24.0));
  CHECK(why_not(whole.credit) == "there is no calibration of this mix");

  tables::Tables none = us_tables();
  none.maturity.reset();
  CHECK(why_not(maturity(question, none).credit) == "there is no temperature log");
  CHECK_FALSE(maturity(question, none).report.maturity);

  // The pour of the specimens, where the log names none.
  question.log_file->cast.reset();
  question.concrete.evidence = plan::Evidence{};
  question.concrete.evidence->cast = at_hour(4.0);
  const auto later = maturity(question).report.maturity;
  REQUIRE(later);
  CHECK(later->points.size() == 21);
  CHECK(in(hour, later->points.back().since_cast) == Approx(20.0));
  question.concrete.evidence->cast->has_offset = false;
  CHECK(maturity(question).report.maturity->points.empty());
  CHECK_FALSE(maturity(question).report.maturity->equivalent_age);
  question.concrete.evidence.reset();
  CHECK(maturity(question).report.maturity->points.empty());
}

TEST_CASE(
    "maturity counts where the log goes on to the time of the question, and nothing where it begins after "
    "it") {
  StrengthQuestion question = about_log();
  calibrate(question);
  const Told now = maturity(question);
  // At 24 h of 20 degC the calibration has 40/e; the margin of the rule set comes off.
  CHECK(in(MPa, now.report.maturity->estimate.value()) == Approx(40.0 / std::exp(1.0)).epsilon(1e-3));
  CHECK(in(MPa, assessed(now.credit)) ==
        Approx(40.0 / std::exp(1.0) - in(MPa, us_rules().maturity_margin.value)).epsilon(2e-3));
  question.asked_at.zoned = at_hour(24.0 + in(hour, us_tables().maturity->longest_gap.value));
  CHECK(is_assessed(maturity(question).credit));
  question.asked_at.zoned->seconds += 1;
  CHECK_THAT(why_not(maturity(question).credit), Catch::StartsWith("the last reading is "));
  question.asked_at.zoned.reset();
  CHECK(why_not(maturity(question).credit) == "the time of the question has no zone, and the log has one");

  // A reading of the very second of the question is one of now, however long the one before it has passed.
  StrengthQuestion at_once = about_log();
  calibrate(at_once);
  at_once.log->readings.erase(at_once.log->readings.end() - 4, at_once.log->readings.end() - 1);
  CHECK(is_assessed(maturity(at_once).credit));
  at_once.asked_at.zoned->seconds -= 1;
  CHECK_THAT(why_not(maturity(at_once).credit), Catch::StartsWith("the last reading is "));

  // Asked a second before the first reading.
  StrengthQuestion early = about_log();
  calibrate(early);
  early.asked_at.zoned = at_hour(0.0);
  early.asked_at.zoned->seconds -= 1;
  const Told nothing = maturity(early);
  CHECK_FALSE(is_assessed(nothing.credit));
  CHECK_FALSE(nothing.report.maturity->credited);
  CHECK(nothing.report.maturity->points.empty());
}

TEST_CASE(
    "a prediction is told on the clock of the pour, whole minutes up, whatever its zone") {
  StrengthQuestion question = about_growth();
  const strength::MaturityLaw law = strength::en_1992_1_1_law(*us_tables().maturity);
  const double age_s = 4.0 / (1.5 - 0.85) * 86400.0, pace = strength::rate(law, degC(10.0)).value();
  REQUIRE(pace < 0.7);
  const long long expected = pour_s + 60 * static_cast<long long>(std::ceil(age_s / pace / 60.0));
  for (const int minutes : {-300, 330, 0}) {
    question.log_file->cast->offset_seconds = 60LL * minutes;
    const Prediction told = predicted(question);
    CHECK(in(day, told.age.value().by_curve) == Approx(age_s / 86400.0));
    CHECK(told.earliest_utc_s.value() == expected);
    CHECK(told.earliest == strength::words_for_moment(expected, minutes));
    CHECK(told.needed_for == "strip");
  }
}

TEST_CASE(
    "no time is predicted at a temperature that is no number, in ten years, or without constants of "
    "maturity") {
  StrengthQuestion question = about_growth();
  question.growth->temperature = Temperature::from_value(std::nan(""));
  const Prediction unknown = predicted(question);
  CHECK(unknown.earliest == "not within ten years");
  CHECK_FALSE(unknown.earliest_utc_s);
  CHECK_FALSE(unknown.slow_utc_s);
  question.growth->temperature = degC(-150.0);
  CHECK(predicted(question).earliest == "not within ten years");
  question.growth->temperature = degC(10.0);
  tables::Tables none = tables_that_grow();
  none.maturity.reset();
  const Prediction by_age = predicted(question, none);
  CHECK(in(day, by_age.age.value().by_curve) == Approx(4.0 / 0.65));
  CHECK(by_age.earliest.empty());
  CHECK_FALSE(by_age.earliest_utc_s);
}

TEST_CASE("a time is predicted up to ten years from now, to the minute") {
  const StrengthQuestion question = about_growth();
  const double pace = strength::rate(strength::en_1992_1_1_law(*us_tables().maturity), degC(10.0)).value();
  const auto in_ten_years_and = [&](double seconds) {
    const double age_d = (3650.0 * 86400.0 + seconds) * pace / 86400.0;
    StrengthReport report;
    StrengthNeeded needed;
    needed.what = "strip";
    needed.required = 30.0 * age_d / (4.0 + 0.85 * age_d) * MPa;
    report.needed = {needed};
    tell_prediction(question, tables_that_grow(), report);
    return report.prediction.value().earliest_utc_s;
  };
  CHECK(in_ten_years_and(-30.0) == pour_s + 3650LL * 86400);  // the whole minute after it
  CHECK_FALSE(in_ten_years_and(30.0));
}

TEST_CASE("nothing is predicted where no strength is needed, or by a curve that is not there") {
  const std::string nothing = "no needed strength, growth curve or strength at 28 days is known";
  StrengthReport report;
  tell_prediction(about_growth(), tables_that_grow(), report);
  CHECK(report.prediction.value().why_not == nothing);
  StrengthQuestion question = about_growth();
  question.growth->curve = "another";
  CHECK(predicted(question).why_not == nothing);
  question = about_growth();
  question.growth->strength_at_28_days.reset();
  CHECK(predicted(question).why_not == nothing);
}

TEST_CASE(
    "a season is judged against a specified strength by limits of the tables: without either it is not") {
  StrengthQuestion question;
  question.season_tests = {{"1", {31.0 * MPa, 33.0 * MPa}, {}},
                           {"2", {29.0 * MPa, 29.0 * MPa}, {}},
                           {"3", {30.0 * MPa, 31.0 * MPa}, {}}};
  const auto season = [&](const tables::Tables& tables) {
    StrengthReport report;
    tell_season(question, tables, report);
    return report.season;
  };
  CHECK_FALSE(season(us_tables()));
  question.season = plan::Season{};
  CHECK_FALSE(season(us_tables()));
  question.season->specified = 28.0 * MPa;
  REQUIRE(season(us_tables()));
  CHECK(in(MPa, season(us_tables())->mean) == Approx(30.5));
  tables::Tables none = us_tables();
  none.acceptance.reset();
  CHECK_FALSE(season(none));
}
