// When a pour has a strength by the calibration of its own mix, from what its sensor has measured. Told, and never a reason
// to lift.
#pragma once

#include <optional>

#include "checks/evaluate_strength.hpp"
#include "tables/tables.hpp"

namespace firstpick::board {

struct CalibratedTime {
  std::optional<long long> utc_s;  // whole minute, rounded up; nothing: no specimen of the calibration was that strong
};

// Nothing where the pour lacks any of: a calibration that can be fitted, a temperature log, the time of casting with its
// offset, the temperature after the last reading ([growth]). Readings after `now` do not count.
std::optional<CalibratedTime> calibrated_time(const checks::StrengthQuestion& pour, Stress strength,
                                              const tables::Tables& tables, const plan::Timestamp& now);

}  // namespace firstpick::board
