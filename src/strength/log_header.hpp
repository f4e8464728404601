// The header of a temperature log: which columns are read, and the scale of each.
#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "record/diagnostic.hpp"
#include "strength/csv.hpp"

namespace firstpick::strength {

struct SensorColumn {
  std::size_t index = 0;
  std::string name, scale;  // "corner"; "degC", "degF" or "K"
};

struct LogColumns {
  std::size_t time = 0;
  SensorColumn sensor;
  std::vector<SensorColumn> beside;  // every other column with a scale
};

// The column of the moments is called time, date/time, timestamp, or so written in other letters and signs. A scale
// stands in brackets or parentheses behind the name of its sensor: degC, degF, K, or a degree sign with C or F. It is
// never taken from anything else: what only looks like a scale is a fault, in the columns beside the sensor too.
std::variant<LogColumns, Diagnostic> log_columns(const std::string& file, const CsvTable& table,
                                                 const std::string& sensor);

}  // namespace firstpick::strength
