// What a temperature log and a calibration say about the strength of one pour, and whether that may count.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/strength_file.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "strength/maturity.hpp"
#include "strength/strength_curve.hpp"
#include "strength/temperature_log.hpp"
#include "tables/tables.hpp"

namespace firstpick::strength {

struct FittedCalibration {
  MaturityLaw law;
  CurveFit fit;
  std::vector<AgedStrength> data;  // equivalent ages, cylinder strengths
};

// Ages of the specimens to equivalent ages at the temperature they cured at, their strengths to cylinder
// strengths, and the curve through them. Not assessed: what maturity_law, to_cylinder or least_squares refuse;
// numbers that cannot be those of concrete.
Outcome<FittedCalibration> fitted_calibration(const plan::Calibration& calibration,
                                              const std::vector<AgedStrength>& aged, const tables::Tables& tables,
                                              Trace& trace);

struct MaturityEstimate {
  long long cast_seconds = 0;  // UTC
  Duration equivalent_age{};
  std::optional<double> temperature_time_degC_h;  // nurse-saul
  plan::Timestamp until;                          // last reading that counts
  Stress strength{};
  Stress scatter{};         // of the calibration about its curve: standard deviation
  Stress standard_error{};  // of `strength`, from the covariance of the fit
  bool at_oldest = false;  // older than every specimen of the calibration: the strength is that of the oldest
};

// The estimate at `at`, never past the last reading. Not assessed: a pour without a zone, or after the last
// reading; an equivalent age below that of the youngest specimen of the calibration.
Outcome<MaturityEstimate> maturity_estimate(const FittedCalibration& calibration, const TemperatureLog& log,
                                            const std::optional<plan::Timestamp>& cast, long long at_seconds,
                                            const tables::Tables& tables, Trace& trace);

struct CompanionCheck {
  std::string tested;      // when
  Duration since_cast{};
  Stress measured{};       // mean, as cylinder strength
  Stress estimated{};
  Ratio difference{};      // estimate over measured, less 1
  bool within = false;
};

// Companion specimens against the estimate at the time they were broken. Not assessed: what makes one useless:
// standard-cured, too few results or results too far apart, broken younger than the rule set's youngest test, after
// the last reading, or after the time of the question.
Outcome<CompanionCheck> companion_check(const plan::Companion& companion, const FittedCalibration& calibration,
                                        const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                        long long asked_seconds, const tables::RuleSet& rules,
                                        const tables::Tables& tables);

// What maturity may count for: the estimate less the margin of the rule set. Not assessed: a rule set that
// refuses maturity; what doubt_about and colder_beside find in the log; no companions, or one that is useless or too
// far from the estimate; latest companions too weak or too long ago; a calibration that scatters, or whose error at
// this age is large; nothing left behind the margin.
Outcome<Stress> creditable_strength(const Outcome<MaturityEstimate>& estimate, const TemperatureLog& log,
                                    const std::vector<Outcome<CompanionCheck>>& companions,
                                    const tables::RuleSet& rules, const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::strength
