// The time at which the calibration of the mix has a strength.
//
//   wait = (t_needed - t_e) / rate(T_after)        S(t_needed) = S_needed,  t_needed not past the oldest specimen
//
// Source   the calibration of the pour; t_e and rate: strength/maturity.cpp. T_after: what the file expects of the
//          concrete after the last reading.
// Range    ages between the youngest and the oldest specimen of the calibration; a strength below that of the
//          youngest is had at the age of the youngest.

#include "board/calibrated_time.hpp"

#include <algorithm>
#include <cmath>

#include "strength/maturity.hpp"
#include "strength/maturity_estimate.hpp"
#include "strength/strength_curve.hpp"

namespace firstpick::board {

namespace {

constexpr double near_enough_s = 1.0;
constexpr double longest_wait_s = 3650.0 * 86400.0;

// The fitted curves rise with age: fitted_calibration refuses others.
std::optional<Duration> age_with(const strength::CurveFit& fit, Stress strength) {
  if (strength::strength_on(fit, fit.youngest) >= strength) return fit.youngest;
  if (!(strength::strength_on(fit, fit.oldest) >= strength)) return {};
  Duration low = fit.youngest, high = fit.oldest;
  while (in(second, high - low) > near_enough_s) {
    const Duration middle = 0.5 * (low + high);
    (strength::strength_on(fit, middle) >= strength ? high : low) = middle;
  }
  return high;
}

}  // namespace

std::optional<CalibratedTime> calibrated_time(const checks::StrengthQuestion& pour, Stress strength,
                                              const tables::Tables& tables, const plan::Timestamp& now) {
  if (!pour.calibration || !pour.log || !pour.log_file || !pour.growth || !pour.growth->temperature) return {};
  const auto cast = pour.log_file->cast    ? pour.log_file->cast
                    : pour.concrete.evidence ? pour.concrete.evidence->cast
                                             : std::nullopt;
  if (!cast || !cast->has_offset) return {};
  Trace silent;
  const auto fitted = strength::fitted_calibration(*pour.calibration, pour.aged, tables, silent);
  const auto* calibration = std::get_if<strength::FittedCalibration>(&fitted);
  if (!calibration) return {};
  const auto needed = age_with(calibration->fit, strength);
  if (!needed) return CalibratedTime{};

  const long long until_s = std::min(pour.log->readings.back().at.seconds, now.seconds);
  const Duration so_far =
      strength::equivalent_age(calibration->law, strength::curing_intervals(*pour.log, *cast, until_s));
  const long long from_s = std::max(until_s, cast->seconds);
  if (!(*needed > so_far)) return CalibratedTime{from_s};
  const double wait_s = in(second, (*needed - so_far) / strength::rate(calibration->law, *pour.growth->temperature));
  if (!(wait_s >= 0.0 && wait_s <= longest_wait_s)) return CalibratedTime{};
  return CalibratedTime{from_s + static_cast<long long>(std::ceil(wait_s / 60.0) * 60.0)};
}

}  // namespace firstpick::board
