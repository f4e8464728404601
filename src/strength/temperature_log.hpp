// A temperature log: what a sensor in the concrete has measured, and what is wrong with it.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct Reading {
  plan::Timestamp at;  // with offset
  Temperature temperature;
  Place place;
  bool counts_from_before = true;  // the time since the reading before counts; of the first: nothing before it
};

struct TemperatureLog {
  std::string file, sensor;
  std::vector<Reading> readings;     // in rising order of time, at least one
  std::vector<Diagnostic> doubts;    // gaps, dead sensor, stamps out of order, readings out of range
  std::vector<TemperatureLog> beside{};  // the other sensors of the file; their doubts are among those above
};

// Text: a header, `time` first among its columns or anywhere, and one column for each sensor with its scale:
//
//   time,corner [degC],core [degC]        degC, degF or K; more ways to write it: log_header.hpp
//   2026-03-02T16:40:00-05:00,18.4,19.1
//
// Decimals by a point, or by a comma where semicolons part the cells.
// Faults (no log at all): what read_csv refuses; no column `time`; no scale, or one that is none; `sensor` not
// there; several sensors and none chosen; a stamp that is no moment with its zone; a cell that is no number.
// Doubts (a log, and it may not carry a lift): a stamp before or at the one above, a reading outside the range
// of the tables, a gap, readings that do not change for too long. The reading or the time in doubt counts for
// nothing in what follows. Every other column with a scale is a sensor of the same pour: what it does not read, a
// reading outside the range and readings that do not change are doubts too, for it may lie in the coldest place.
std::variant<TemperatureLog, std::vector<Diagnostic>> read_temperature_log(const std::string& file,
                                                                           std::string_view text,
                                                                           const std::string& sensor,
                                                                           const tables::MaturityConstants& limits);

}  // namespace firstpick::strength
