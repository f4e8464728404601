// What in the temperature log of a pour stands against lifting by it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "strength/temperature_log.hpp"
#include "tables/tables.hpp"

namespace firstpick::strength {

// The first thing that stands against any lift from this pour, with file and line: a doubt of the reader (gap, stamp
// out of order, dead sensor, no temperature of concrete), concrete at or below 0 degC after the pour, concrete hotter
// than the peak of the tables. Nothing: the log may be believed.
std::optional<NotAssessed> doubt_about(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                       const tables::MaturityConstants& limits);

// Another sensor of the log that was colder than the named one on the mean of the time from the pour to `until`, by
// more than sensors differ: the colder place is the weaker one. Nothing: the named one is the coldest, or alone.
std::optional<NotAssessed> colder_beside(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                         long long until_seconds, const tables::MaturityConstants& limits);

// Specimens and log of one pour that name different times of casting.
std::optional<NotAssessed> cast_conflict(const std::optional<plan::Evidence>& evidence,
                                         const std::optional<plan::Timestamp>& cast_of_log);

// One sentence for each thing about the log that a reader must know: late start, cold, hot.
std::vector<std::string> remarks_on(const TemperatureLog& log, const std::optional<plan::Timestamp>& cast,
                                    const tables::MaturityConstants& limits);

}  // namespace firstpick::strength
