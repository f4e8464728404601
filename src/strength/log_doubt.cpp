// Doubts about a temperature log, and about which pour it is of.
//
//   mean T = sum T_a dt / sum dt       a sensor is colder where its mean lies more than T_col below the named one's
//
// Source   limits of the reader, T_peak and T_col: tables/maturity.toml. 0 degC: water freezes.
// Range    readings from the pour on; without a zoned time of the pour, all of them.

#include "strength/log_doubt.hpp"

#include <fmt/format.h>

#include "strength/maturity.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

constexpr Temperature freezing = Temperature::from_value(273.15);  // of water: 0 degC
constexpr const char* break_specimens = "have somebody look at this pour, and break specimens cured with it";

long long start_of(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast) {
  return cast && cast->has_offset ? cast->seconds : log.readings.front().at.seconds;
}

template <class Predicate>
const Reading* first_reading(const TemperatureLog& log, long long from_seconds, Predicate is_so) {
  for (const Reading& reading : log.readings)
    if (reading.at.seconds >= from_seconds && is_so(reading)) return &reading;
  return nullptr;
}

const Reading* first_frozen(const TemperatureLog& log, long long from_seconds) {
  return first_reading(log, from_seconds, [](const Reading& r) { return r.temperature <= freezing; });
}

const Reading* first_hot(const TemperatureLog& log, long long from_seconds, const tables::MaturityConstants& limits) {
  return first_reading(log, from_seconds,
                       [&](const Reading& r) { return r.temperature > limits.peak.value; });
}

std::string line_of(const TemperatureLog& log, const Place& place) {
  return fmt::format("{}:{}", log.file, place.line);
}

// Nothing where no time counts.
std::optional<Temperature> mean_of(const TemperatureLog& log, const plan::Timestamp& from, long long until_seconds) {
  double K_s = 0.0, seconds = 0.0;
  for (const CuringInterval& each : curing_intervals(log, from, until_seconds)) {
    K_s += each.mean.value() * each.length.value();
    seconds += each.length.value();
  }
  if (!(seconds > 0.0)) return {};
  return Temperature::from_value(K_s / seconds);
}

}  // namespace

std::optional<NotAssessed> doubt_about(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                       const tables::MaturityConstants& limits) {
  if (!log.doubts.empty()) {
    const Diagnostic& first = log.doubts.front();
    return NotAssessed{fmt::format("the temperature log is in doubt, {}: {}", line_of(log, first.place), first.what),
                       break_specimens};
  }
  const long long from = start_of(log, cast);
  if (const Reading* frozen = first_frozen(log, from))
    return NotAssessed{fmt::format("the concrete was at or below 0 degC, {}", line_of(log, frozen->place)),
                       break_specimens};
  if (const Reading* hot = first_hot(log, from, limits))
    return NotAssessed{fmt::format("the concrete was hotter than {}, {}", print(limits.peak.value, UnitSystem::si),
                                   line_of(log, hot->place)),
                       break_specimens};
  return {};
}

std::optional<NotAssessed> colder_beside(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                         long long until_seconds, const tables::MaturityConstants& limits) {
  plan::Timestamp from = log.readings.front().at;
  from.seconds = start_of(log, cast);
  const auto named = mean_of(log, from, until_seconds);
  if (!named) return {};
  for (const TemperatureLog& other : log.beside) {
    if (other.readings.empty()) continue;  // in doubt already
    const auto mean = mean_of(other, from, until_seconds);
    if (!mean)
      return NotAssessed{fmt::format("the sensor '{}' beside '{}' has no time that counts", other.sensor, log.sensor),
                         "name the sensor of the coldest place, and keep a log of it"};
    if (mean->value() < named->value() - limits.colder_by.value.value())
      return NotAssessed{fmt::format("the sensor '{}' was colder than '{}': {} on the mean, against {}", other.sensor,
                                     log.sensor, print(*mean, UnitSystem::si), print(*named, UnitSystem::si)),
                         fmt::format("write sensor = \"{}\" in [temperature_log]: the coldest place governs",
                                     other.sensor)};
  }
  return {};
}

std::optional<NotAssessed> cast_conflict(const std::optional<plan::Evidence>& evidence,
                                         const std::optional<plan::Timestamp>& cast_of_log) {
  if (!evidence || !evidence->cast || !cast_of_log) return {};
  if (evidence->cast->seconds == cast_of_log->seconds && evidence->cast->has_offset == cast_of_log->has_offset)
    return {};
  return NotAssessed{"the specimens and the temperature log of the pour name different times of casting",
                     "correct 'cast' in the strength file"};
}

std::vector<std::string> remarks_on(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                    const tables::MaturityConstants& limits) {
  std::vector<std::string> remarks;
  if (cast && cast->has_offset) {
    const auto late = Duration::from_value(static_cast<double>(log.readings.front().at.seconds - cast->seconds));
    if (late > limits.longest_gap.value)
      remarks.push_back(fmt::format("the log starts {} after the pour: that time counts for nothing",
                                    print(late, UnitSystem::si)));
  }
  const long long from = start_of(log, cast);
  if (const Reading* frozen = first_frozen(log, from))
    remarks.push_back(fmt::format("the concrete was at or below 0 degC from {} on: it may have frozen, and maturity "
                                  "does not see that",
                                  frozen->at.text));
  if (const Reading* hot = first_hot(log, from, limits))
    remarks.push_back(fmt::format("the concrete was hotter than {} from {} on: it ends weaker than maturity says",
                                  print(limits.peak.value, UnitSystem::si), hot->at.text));
  return remarks;
}

}  // namespace firstpick::strength
