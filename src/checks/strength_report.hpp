// Everything that `firstpick strength` has to tell, before anyone lays it out. Output reads this and decides nothing.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/compare.hpp"
#include "checks/report.hpp"
#include "record/diagnostic.hpp"
#include "record/outcome.hpp"
#include "strength/acceptance.hpp"
#include "strength/break_statistics.hpp"
#include "strength/growth_curve.hpp"
#include "strength/maturity_estimate.hpp"

namespace firstpick::checks {

// "reached", "HOLD", "below": of a strength. It is no verdict on a lift.
std::string_view strength_word_for(Verdict verdict);

struct StrengthNeeded {  // one for each lift
  std::string what;      // "strip", or "the lift"
  std::optional<Stress> required, credited;
  std::optional<double> utilization;
  Result result = Result::missing;
  std::string rests_on;  // "specimens", "maturity", or nothing
  std::string why, remedy;
};

struct BrokenSpecimens {
  std::vector<Stress> results;  // as measured, in the order of the file
  strength::BreakStatistics of;
  std::string wide;             // a sentence where they lie far apart
  std::vector<Stress> as_cylinders{};     // the same results, converted; empty where the tables do not know the kind
  std::optional<Duration> since_cast{};   // age of the concrete at the test
};

struct MaturityPoint {          // one for each reading after the pour
  Duration since_cast{};
  Temperature temperature{};
  Duration equivalent_age{};
  std::optional<Stress> strength;  // inside the ages of the calibration
};

struct MaturityPart {
  std::string sensor, law, last_reading;
  std::optional<Duration> equivalent_age;
  std::optional<double> temperature_time_degC_h;
  std::optional<Stress> estimate, credited;
  std::string why_no_estimate, why_not_credited;
  std::vector<Outcome<strength::CompanionCheck>> companions;
  std::vector<MaturityPoint> points;
};

struct Prediction {
  std::string curve;
  std::string needed_for;
  std::optional<strength::PredictedAge> age;  // at 20 degC
  std::optional<Duration> adjusted_now;       // temperature-adjusted age at the last reading
  std::string earliest, slow, fast;           // times on the clock, or words why there are none
  std::optional<long long> earliest_utc_s, slow_utc_s;  // the first two as instants, rounded up to whole minutes
  std::string why_not;
};

struct StrengthReport {
  std::string file, mark;
  UnitSystem units = UnitSystem::si;
  std::string fingerprint, rules, rules_title, asked_at;
  Verdict verdict = Verdict::hold;
  std::string basis;                     // what was tested, how many, how cured, which of them counts
  std::optional<Stress> usable;
  std::optional<BrokenSpecimens> broken;
  std::vector<StrengthNeeded> needed;
  std::optional<strength::FittedCalibration> calibration;
  std::string mix, why_no_calibration;
  std::optional<MaturityPart> maturity;
  std::optional<Prediction> prediction;
  std::optional<strength::Acceptance> season;
  std::string why_no_acceptance;
  std::vector<std::string> notes;
  std::vector<Diagnostic> doubts;        // of the temperature log
  std::vector<std::string> choices, cautions, overridden;
  std::vector<Source> unconfirmed;
  Trace trace;
};

}  // namespace firstpick::checks
