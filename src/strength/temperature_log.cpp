#include "strength/temperature_log.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "strength/csv.hpp"
#include "strength/log_header.hpp"
#include "strength/moment_text.hpp"
#include "units/parse.hpp"
#include "units/print.hpp"

namespace firstpick::strength {

namespace {

// A point or, where semicolons part the cells, a comma before the decimals: "18.4", "18,4".
std::optional<double> reading_in(Cell cell, char separator) {
  if (separator == ';' && std::ranges::count(cell.text, ',') == 1 && cell.text.find('.') == std::string::npos)
    std::ranges::replace(cell.text, ',', '.');
  return number_in(cell);
}

// The sensor that is read: its faults refuse the file. One beside it: what it does not read is a doubt, told once; the
// stamps are those of the other and are told there.
enum class Role { read, beside };

class LogReader {
 public:
  LogReader(TemperatureLog& log, std::string scale, char separator, const tables::MaturityConstants& limits, Role role)
      : log_(log), scale_(std::move(scale)), separator_(separator), limits_(limits), role_(role) {}

  void row(const Cell& time, const Cell& value) {
    const auto moment = moment_of(time.text);
    if (const auto* wrong = std::get_if<QuantityFault>(&moment))
      return role_ == Role::beside ? void() : fault({time.place.line, time.place.column + wrong->at}, wrong->what, wrong->help);
    const auto number = reading_in(value, separator_);
    const auto temperature = number ? quantity_in<Temperature>(*number, scale_) : std::nullopt;
    if (!temperature && role_ == Role::beside) {
      broken_ = true;
      if (!std::exchange(told_missing_, true)) doubt(value.place, "it has no reading here");
      return;
    }
    if (!temperature)
      return fault(value.place, value.text.empty() ? std::string("the reading is missing")
                                                   : fmt::format("'{}' is no reading", value.text),
                   separator_ == ';' ? "write a number such as 18.4 or 18,4" : "write a number, with a point before its decimals");
    reading({std::get<plan::Timestamp>(moment), *temperature, time.place}, value.place);
  }

  std::vector<Diagnostic> faults;

 private:
  void fault(Place place, std::string what, std::string help = {}) {
    if (faults.size() < most_faults) faults.push_back({log_.file, place, std::move(what), std::move(help)});
  }
  void doubt(Place place, std::string what) {
    if (role_ == Role::beside) what = fmt::format("the sensor '{}' beside the one that is read: {}", log_.sensor, what);
    if (log_.doubts.size() < most_faults) log_.doubts.push_back({log_.file, place, std::move(what), {}});
  }

  void reading(Reading read, Place value_place) {
    if (!log_.readings.empty() && !(read.at.seconds > log_.readings.back().at.seconds)) {
      if (role_ == Role::beside) return void(broken_ = true);
      const bool same = read.at.seconds == log_.readings.back().at.seconds;
      doubt(read.place, fmt::format("{} is {} the reading above it, {}: this reading does not count", read.at.text,
                                    same ? "the same moment as" : "before", log_.readings.back().at.text));
      broken_ = true;
      return;
    }
    if (!(read.temperature >= limits_.coldest.value) || !(read.temperature <= limits_.hottest.value)) {
      doubt(value_place, fmt::format("{} is no temperature of concrete: this reading does not count",
                                     print(read.temperature, UnitSystem::si)));
      broken_ = true;
      return;
    }
    if (!log_.readings.empty()) follow(read);
    broken_ = false;
    log_.readings.push_back(std::move(read));
  }

  // What the time since the reading before is worth.
  void follow(Reading& read) {
    const Reading& before = log_.readings.back();
    const auto gap = Duration::from_value(static_cast<double>(read.at.seconds - before.at.seconds));
    if (gap > limits_.longest_gap.value) {
      if (role_ == Role::read) doubt(read.place, fmt::format("no reading for {}, since {}: this time does not count",
                                                         print(gap, UnitSystem::si), before.at.text));
      read.counts_from_before = false;
    }
    if (broken_) read.counts_from_before = false;
    if (read.temperature != before.temperature) {
      first_same_ = log_.readings.size();
      told_dead_ = false;
      return;
    }
    const Reading& earliest = log_.readings[first_same_];
    const auto same = Duration::from_value(static_cast<double>(read.at.seconds - earliest.at.seconds));
    if (!(same > limits_.frozen_after.value)) return;
    read.counts_from_before = false;
    if (told_dead_) return;
    // The whole time without a change is in doubt, not only what is past the limit.
    for (std::size_t i = first_same_ + 1; i < log_.readings.size(); ++i)
      log_.readings[i].counts_from_before = false;
    doubt(earliest.place, fmt::format("the readings from {} on do not change for more than {}: this time does not "
                                     "count",
                                     earliest.at.text, print(limits_.frozen_after.value, UnitSystem::si)));
    told_dead_ = true;
  }

  TemperatureLog& log_;
  std::string scale_;
  char separator_;
  const tables::MaturityConstants& limits_;
  Role role_;
  bool told_missing_ = false;
  bool broken_ = false;          // a reading was left out since the last one that counts
  std::size_t first_same_ = 0;   // the first of the readings that do not change
  bool told_dead_ = false;
};

}  // namespace

std::variant<TemperatureLog, std::vector<Diagnostic>> read_temperature_log(
    const std::string& file, std::string_view text, const std::string& sensor,
    const tables::MaturityConstants& limits) {
  auto read = read_csv(file, text);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return std::move(*faults);
  const CsvTable& table = std::get<CsvTable>(read);
  const auto columns = log_columns(file, table, sensor);
  if (const auto* fault = std::get_if<Diagnostic>(&columns)) return std::vector{*fault};
  const auto& [time, chosen, beside] = std::get<LogColumns>(columns);

  TemperatureLog log{.file = file, .sensor = chosen.name};
  LogReader reader(log, chosen.scale, table.separator, limits, Role::read);
  for (const auto& row : table.rows) reader.row(row[time], row[chosen.index]);
  if (!reader.faults.empty()) return std::move(reader.faults);
  if (log.readings.empty())
    return std::vector{Diagnostic{file, {}, "no reading of the log can be used", {}}};
  for (const SensorColumn& column : beside) {
    TemperatureLog other{.file = file, .sensor = column.name};
    LogReader other_reader(other, column.scale, table.separator, limits, Role::beside);
    for (const auto& row : table.rows) other_reader.row(row[time], row[column.index]);
    log.doubts.insert(log.doubts.end(), other.doubts.begin(), other.doubts.end());
    log.beside.push_back(std::move(other));
  }
  return log;
}

}  // namespace firstpick::strength
